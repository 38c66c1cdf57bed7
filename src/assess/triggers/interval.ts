import type { IntervalNode } from '../../graph/rule-graph.js';
import type { LimitFacts } from '../assessment.js';
import { type Axis, axisOf } from '../axis.js';
import { baseOf, type NoBase } from '../base.js';
import { doingsOf } from '../doings.js';
import { hiddenStop, judge, type LimitRule } from '../judge.js';
import { carried } from '../kinds.js';
import type { SeveralDoings } from '../often-done.js';
import { cannotTell, type Reach } from '../reach.js';
import type { TriggerContext } from '../trigger-context.js';
import type { World } from '../world.js';

/** Every so much, counted from the last doing (docs/meaning.md §4). */
export function interval(world: World, node: IntervalNode, context: TriggerContext): Reach {
  const axis = axisOf(world, node.amount);
  const { found, ...told }: Partial<SeveralDoings> & Pick<SeveralDoings, 'found'> =
    node.doings === undefined
      ? { found: baseOf(world, node, axis, doingsOf(world, context.task), context.fromStart) }
      : carried(world.kinds.aspects, 'often')(world, node, axis, context);
  if ('missing' in found) return lacksBase(world, node, { ...found, ...told });
  const { base } = found;
  const now = axis.now(base.when);
  if (now === null) return lacksNow(world, node, axis, { ...base, ...told });
  const value = axis.add(base.anchor, node.amount, base.spans);
  const due = axis.add(base.anchor, node.amount, base.spans + 1);
  const anchor = base.spans === 0 ? {} : { anchor: { value: base.anchor, spans: base.spans } };
  const measured = { base: { value, why: base.why, when: base.when, entries: base.entries, ...anchor }, due, now, ...told };
  if (node.standstill === undefined) return judge(world, node, axis, measured);
  return judge(world, node, axis, carried(world.kinds.aspects, 'storedTime')(world, node.standstill, measured));
}

/** The limit has no base, or one whose meter value nobody noted. */
export function lacksBase(world: World, rule: LimitRule, found: NoBase, now: LimitFacts['now'] = null): Reach {
  const state = found.unrecorded ? 'unrecorded' : 'unknown';
  const limit = { base: null, span: null, due: null, overdueAfter: null, comingUpFrom: null, now, left: null, used: null };
  const stood = [found.since ?? [], found.later ?? []].flat().map((at) => ({ on: 'moment', at }) as const);
  const { note } = found;
  const told = { ...(now === null ? {} : { limit }), ...(stood.length === 0 ? {} : { stood }), ...(note && { note }) };
  world.observe({ node: rule.id, state, ...told, entries: found.entries, missing: [found.missing] });
  return cannotTell(rule.id, [found.missing], state, hiddenStop(rule));
}

/** The limit has a base, and its axis has no reading for now. */
export function lacksNow(world: World, rule: LimitRule, axis: Axis, { entries, note }: Pick<NoBase, 'entries' | 'note'>): Reach {
  world.observe({ node: rule.id, state: 'unknown', entries, missing: [axis.missing], ...(note && { note }) });
  return cannotTell(rule.id, [axis.missing], 'unknown', hiddenStop(rule));
}
