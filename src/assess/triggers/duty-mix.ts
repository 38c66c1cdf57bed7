import type { DutyMixNode } from '../../graph/rule-graph.js';
import type { EntryId } from '../../history/entry.js';
import type { Outing } from '../../history/timeline.js';
import { notBefore } from '../../values/moment.js';
import type { Moment } from '../../values/moment.js';
import type { Observation } from '../assessment.js';
import { axisOf } from '../axis.js';
import { baseOf } from '../base.js';
import { doingsOf } from '../doings.js';
import { judge } from '../judge.js';
import type { Reach } from '../reach.js';
import type { TriggerContext } from '../trigger.js';
import type { World } from '../world.js';
import { lacksBase, lacksNow } from './interval.js';

/**
 * An hour interval that hours in several duties use up in proportion: due when Σ hᵢ/Nᵢ ≥ 1.
 *
 * The sum is exact: every hour counts in whole L/Nᵢ, where L is the least common multiple of the intervals, and the limit is L.
 * Source: Palmgren–Miner linear damage, any machine-design textbook.
 */
export function dutyMix(world: World, node: DutyMixNode, context: TriggerContext): Reach {
  const amount = { on: 'meter', meter: node.meter, ticks: node.ticks } as const;
  const axis = axisOf(world, amount);
  const found = baseOf(world, { ...node, amount }, axis, doingsOf(world, context.task), context.fromStart);
  if ('missing' in found) return lacksBase(world, node, found);
  const now = axis.now(found.base.when);
  if (now === null) return lacksNow(world, node, axis, found.base);
  const base = axis.add(found.base.anchor, amount, found.base.spans);
  const shares = sharesSince(world, node, found.base.when, Math.max(0, now.value - base));
  const whole = shares.reduce((lcm, share) => leastCommonMultiple(lcm, share.of), node.ticks);
  const spent = shares.reduce((sum, share) => sum + share.ticks * (whole / share.of), 0);
  const ordinaryLeft = Math.ceil((whole - spent) / (whole / node.ticks));
  const entries = [...now.entries, ...shares.flatMap((share) => share.entries)];
  return judge(world, node, axis, {
    base: { value: base, why: found.base.why, entries: found.base.entries },
    due: now.value + ordinaryLeft,
    now: { value: now.value, entries },
    mix: { used: spent / whole, shares },
  });
}

type Share = NonNullable<Observation['shares']>[number];

/** Splits the hours since the base over the duties; an hour in several counts in the strictest, and what no outing claims is ordinary. */
function sharesSince(world: World, node: DutyMixNode, base: Moment | null, total: number): readonly Share[] {
  const strictest = [...node.duties].sort((a, b) => a.ticks - b.ticks);
  const sums = new Map(strictest.map(({ duty, ticks }) => [duty, { duty, of: ticks, ticks: 0, entries: [] as EntryId[] }]));
  let unclaimed = total;
  for (const outing of world.timeline.outings) {
    world.step();
    if (base !== null && !notBefore(outing.end ?? outing.when, base)) continue;
    let free = Math.min(outing.ticks, unclaimed);
    for (const { duty } of strictest) {
      const claimed = Math.min(free, hoursIn(outing, duty));
      const sum = sums.get(duty);
      if (sum === undefined || claimed <= 0) continue;
      sum.ticks += claimed;
      sum.entries.push(outing.entry);
      free -= claimed;
      unclaimed -= claimed;
    }
  }
  return [{ duty: null, of: node.ticks, ticks: unclaimed, entries: [] }, ...sums.values()];
}

function hoursIn(outing: Outing, duty: string): number {
  return outing.duties.find((each) => each.duty === duty)?.ticks ?? 0;
}

function leastCommonMultiple(a: number, b: number): number {
  return (a / greatestCommonDivisor(a, b)) * b;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}
