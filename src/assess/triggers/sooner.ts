import type { SoonerNode } from '../../graph/rule-graph.js';
import { axisOf } from '../axis.js';
import { fallOf } from '../fall.js';
import { judge } from '../judge.js';
import { quiet, type Reach } from '../reach.js';
import type { TriggerContext } from '../trigger-context.js';
import type { World } from '../world.js';

/** At a share of the time that a level takes to fall to its low mark, from the levels and top-ups on record. */
export function sooner(world: World, node: SoonerNode, _context: TriggerContext): Reach {
  const meter = world.index.graph.meters.find((each) => each.unit === 'h' && !each.fromOutings);
  const fall = meter === undefined ? { litresPerTick: null, entries: [] } : fallOf(world, node.dipstick, meter.id);
  if (fall.litresPerTick === null || meter === undefined) {
    world.observe({
      node: node.id,
      state: 'clear',
      entries: fall.entries,
      missing: [{ what: 'reading', instrument: node.dipstick, because: 'too-few' }],
    });
    return quiet(node.id);
  }
  const amount = { on: 'meter', meter: meter.id, ticks: Math.round(node.share * fall.ticksLeft) } as const;
  const axis = axisOf(world, amount);
  const now = axis.now(null) ?? { value: fall.last.value, entries: [] };
  const lead = { size: Math.floor(Math.min(amount.ticks / 10, 10 * 36_000)) };
  return judge(world, { id: node.id, late: { size: 0 }, lead }, axis, {
    base: { value: fall.last.value, why: 'reading', when: fall.when, entries: fall.entries },
    due: axis.add(fall.last.value, amount, 1),
    now,
    note: { is: 'consumption', litresPerHour: fall.litresPerTick * 36_000, levels: fall.levels, litresLeft: fall.litresLeft },
  });
}
