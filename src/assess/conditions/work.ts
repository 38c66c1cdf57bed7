/** Conditions on work: whether it goes on, and whether there was any since a task was done. */
import type { UnworkedNode } from '../../graph/rule-graph.js';
import type { Outing } from '../../history/timeline.js';
import { isAfter, notBefore, type Moment } from '../../values/moment.js';
import { realDoings } from '../doings.js';
import { type Finding, found } from '../finding.js';
import { outingOver, workOn } from '../occasions.js';
import type { World } from '../world.js';

/** An outing is under way. One that is only intended has not begun. */
export function atWork(world: World): Finding {
  const outing = workOn(world, 'outing')?.outing ?? null;
  if (outing !== null) return found(true, outing.when, [outing.entry]);
  const last = outingOver(world, 'work');
  return found(false, last?.end ?? null, last === null ? [] : [last.entry]);
}

/** No outing since the task was last done; if it never was, none at all. One that began or went on after the doing is since it. */
export function unworked(world: World, node: UnworkedNode): Finding {
  const doing = realDoings(world, node.task).findLast(({ when }) => when !== null);
  const last = latest(world, doing?.when ?? null);
  if (doing?.when == null) return found(last === null, last?.when ?? null, last === null ? [] : [last.entry]);
  if (last === null) return found(true, doing.when, doing.entries);
  return { ...found(false, last.when, [...new Set([...doing.entries, last.entry])]), stood: [{ on: 'moment', at: doing.when }] };
}

function latest(world: World, since: Moment | null): Outing | null {
  const { outings } = world.timeline;
  world.step(outings.length);
  return outings.findLast(({ when, end }) => since === null || notBefore(when, since) || end === null || isAfter(end, since)) ?? null;
}
