import type { IntervalNode } from '../../graph/rule-graph.js';
import type { Missing } from '../assessment.js';
import { type Axis, axisOf } from '../axis.js';
import { baseOf, type NoBase } from '../base.js';
import { doingsOf } from '../doings.js';
import { judge, type LimitRule } from '../judge.js';
import { carried } from '../kinds.js';
import { cannotTell, type Reach } from '../reach.js';
import type { TriggerContext } from '../trigger-context.js';
import type { World } from '../world.js';

/** Every so much, counted from the last doing (docs/meaning.md §4). */
export function interval(world: World, node: IntervalNode, context: TriggerContext): Reach {
  const axis = axisOf(world, node.amount);
  const found =
    node.doings === undefined
      ? baseOf(world, node, axis, doingsOf(world, context.task), context.fromStart)
      : carried(world.kinds.aspects, 'often')(world, node, axis, context);
  if ('missing' in found) return lacksBase(world, node, found);
  const { base, ...told } = found;
  const now = axis.now(base.when);
  if (now === null) return lacksNow(world, node, axis, { ...base, ...told });
  const value = axis.add(base.anchor, node.amount, base.spans);
  const due = axis.add(base.anchor, node.amount, base.spans + 1);
  const measured = { base: { ...base, value }, due, now, ...told };
  if (node.standstill === undefined) return judge(world, node, axis, measured);
  return judge(world, node, axis, carried(world.kinds.aspects, 'standstill')(world, node.standstill, measured));
}

/** The limit has no base, or one whose meter value nobody noted. */
export function lacksBase(world: World, rule: LimitRule, { missing, unrecorded, entries, ...told }: NoBase): Reach {
  const state = unrecorded ? 'unrecorded' : 'unknown';
  world.observe({ node: rule.id, state, ...told, entries, missing: [missing] });
  return cannotJudge(world, rule, missing, state);
}

/** The limit has a base, and its axis has no reading for now. */
export function lacksNow(world: World, rule: LimitRule, axis: Axis, { entries, note }: Pick<NoBase, 'entries' | 'note'>): Reach {
  world.observe({ node: rule.id, state: 'unknown', entries, missing: [axis.missing], ...(note && { note }) });
  return cannotJudge(world, rule, axis.missing, 'unknown');
}

/** It may hide a hard stop. */
function cannotJudge(world: World, rule: LimitRule, missing: Missing, state: 'unknown' | 'unrecorded'): Reach {
  const stops = rule.hold === undefined ? [] : carried(world.kinds.aspects, 'hold').hidden(rule.id, rule.hold);
  return cannotTell(rule.id, [missing], state, stops);
}
