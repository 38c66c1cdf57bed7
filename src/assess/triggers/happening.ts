import type { AttachingNode, EventNode, RefuellingNode } from '../../graph/rule-graph.js';
import type { EntryId } from '../../history/entry.js';
import { notBefore } from '../../values/moment.js';
import { axisOf } from '../axis.js';
import { stoodOn } from '../base.js';
import { lastDoingSince } from '../doings.js';
import { asHappening, type Happening, lastHappening, type NotYet, notYet } from '../happenings.js';
import { judge } from '../judge.js';
import { begunBy } from '../spells.js';
import { dueSince, quiet, type Reach } from '../reach.js';
import type { TriggerContext } from '../trigger-context.js';
import type { World } from '../world.js';
import { afterTimes } from './after-times.js';
import { lacksBase, lacksNow } from './interval.js';

/** After an attachment was put on. */
export function attaching(world: World, node: AttachingNode, context: TriggerContext): Reach {
  const spells = world.timeline.attachments.get(node.attachment) ?? [];
  return afterHappening(world, node, asHappening(world, spells.at(-1)?.begin), context, begunBy(spells));
}

/** After each refuelling. */
export function refuelling(world: World, node: RefuellingNode, context: TriggerContext): Reach {
  return afterHappening(world, node, asHappening(world, world.timeline.refuellings.at(-1)), context);
}

/** After a declared event or after another task, at once or within a span. */
export function event(world: World, node: EventNode, context: TriggerContext): Reach {
  if (node.happenings !== undefined) return afterTimes(world, node, node.happenings, context);
  return afterHappening(world, node, lastHappening(world, node.event), context);
}

function afterHappening(
  world: World,
  node: AttachingNode | RefuellingNode | EventNode,
  latest: Happening | undefined,
  context: TriggerContext,
  begun: readonly EntryId[] = [],
): Reach {
  if (latest === undefined) {
    const told: NotYet = node.kind === 'event' ? notYet(world, node.event) : { entries: [], note: { is: 'not-happened' } };
    world.observe({ node: node.id, state: 'clear', ...told });
    return quiet(node.id);
  }
  const last = lastDoingSince(world, context.task, latest.when);
  const isDone = last !== undefined && notBefore(last.when, latest.when);
  if (!isDone && node.kind === 'event' && node.within !== undefined) return within(world, { ...node, within: node.within }, latest);
  const entries = [...new Set([...begun, ...latest.entries, ...(last?.entries ?? [])])];
  world.observe({
    node: node.id,
    state: isDone ? 'clear' : 'due',
    entries,
    reachedAt: isDone ? null : latest.when,
    note: { is: 'happened', when: latest.when, done: last?.when ?? null },
  });
  return isDone ? quiet(node.id) : dueSince(node.id, latest.when);
}

function within(world: World, node: EventNode & { readonly within: NonNullable<EventNode['within']> }, latest: Happening): Reach {
  const axis = axisOf(world, node.within);
  const base = latest.on(axis);
  if (base === null)
    return lacksBase(world, node, { missing: axis.missing, unrecorded: false, entries: latest.entries, ...stoodOn(latest.when) });
  const now = axis.now(latest.when);
  if (now === null) return lacksNow(world, node, axis, { entries: latest.entries });
  const entries = [...new Set([...latest.entries, ...base.entries])];
  return judge(world, node, axis, {
    base: { value: base.value, why: 'event', when: latest.when, entries },
    due: axis.add(base.value, node.within, 1),
    now,
  });
}
