import type { EventNode } from '../../graph/rule-graph.js';
import { type Moment, notBefore } from '../../values/moment.js';
import { datedDoings, lastDoingSince } from '../doings.js';
import { happeningsOf } from '../happenings.js';
import { dueSince, quiet, type Reach } from '../reach.js';
import type { TriggerContext } from '../trigger-context.js';
import type { World } from '../world.js';

/** After something has happened so many times that no doing follows: due since the last that it takes, coming up when one is wanting (docs/meaning.md §5). */
export function afterTimes(world: World, node: EventNode, of: number, { task }: TriggerContext): Reach {
  const all = happeningsOf(world, node.event);
  const doings = datedDoings(world, task);
  const isFollowed = (when: Moment): boolean => doings.some((doing) => notBefore(doing.when, when));
  // What the last doing follows, it follows with all that was before.
  const followed = all.findLastIndex(({ when }) => isFollowed(when)) + 1;
  world.step((all.length - followed + 1) * Math.max(1, doings.length));
  const open = all.slice(followed);
  const [reached, newest] = [open[of - 1], open.at(-1)];
  const last = lastDoingSince(world, task, all.at(-1)?.when ?? null);
  const state = reached !== undefined ? 'due' : open.length === of - 1 ? 'coming-up' : 'clear';
  world.observe({
    node: node.id,
    state,
    entries: [...new Set([...open.flatMap(({ entries }) => entries), ...(last?.entries ?? [])])],
    reachedAt: reached?.when ?? null,
    note: { is: 'happened-times', times: open.length, of, when: newest?.when ?? null, done: last?.when ?? null },
  });
  return reached === undefined ? { ...quiet(node.id), state } : dueSince(node.id, reached.when);
}
