import { firstIndex } from '../../base/first-index.js';
import type { EventNode } from '../../graph/rule-graph.js';
import { type Moment, notBefore } from '../../values/moment.js';
import { type DatedDoing, datedDoings, lastDoingSince } from '../doings.js';
import { entriesOf, happeningsOf } from '../happenings.js';
import { dueSince, quiet, type Reach } from '../reach.js';
import type { TriggerContext } from '../trigger-context.js';
import type { World } from '../world.js';

/** After something has happened so many times that no doing follows: due since the last that it takes, coming up when one is wanting (docs/meaning.md §5). */
export function afterTimes(world: World, node: EventNode, of: number, { task }: TriggerContext): Reach {
  const all = happeningsOf(world, node.event);
  const doings = datedDoings(world, task);
  const answers = lastAnswer(doings);
  // What a doing follows, it follows with all that was before.
  const from = answers === null ? 0 : firstIndex(all.length, (at) => !notBefore(answers, all[at]?.when ?? answers));
  // More than it takes alter nothing.
  const open = all.slice(from, from + of);
  world.step(open.length + 1);
  const [reached, newest] = [open[of - 1], open.at(-1)];
  const last = lastDoingSince(world, task, all.at(-1)?.when ?? null);
  const state = reached !== undefined ? 'due' : open.length === of - 1 ? 'coming-up' : 'clear';
  world.observe({
    node: node.id,
    state,
    entries: [...new Set([...open.flatMap(entriesOf), ...(last?.entries ?? [])])],
    reachedAt: reached?.when ?? null,
    note: { is: 'happened-times', times: open.length, of, when: newest?.when ?? null, done: last?.when ?? null },
  });
  return reached === undefined ? { ...quiet(node.id), state } : dueSince(node.id, reached.when);
}

/** The moment that everything is held against: of the last day on which it was done the latest; one without a minute is not before anything of its day. */
function lastAnswer(doings: readonly DatedDoing[]): Moment | null {
  const last = doings.at(-1)?.when;
  if (last === undefined) return null;
  const firstOfDay = doings[doings.findLastIndex(({ when }) => when.day !== last.day) + 1]?.when ?? last;
  return firstOfDay.minute === null ? firstOfDay : last;
}
