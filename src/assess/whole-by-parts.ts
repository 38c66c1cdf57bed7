/**
 * What a record must show besides of a task that is `met by` others.
 *
 * A doing of the whole lets its parts begin anew (docs/meaning.md §3). An entry that is cited for something else may be a doing of a part; with
 * the doings of the whole left out, such entries could make up one that never was.
 */
import type { Task } from '../graph/rule-graph.js';
import type { EntryId } from '../history/entry.js';
import type { Observation } from './assessment.js';
import type { World } from './world.js';

/** The record with the doings of the whole that came after the first doing of a part that it cites. */
export function withWholes(world: World, task: Task, record: readonly Observation[]): readonly Observation[] {
  const doings = world.realDoings.get(task.id);
  if (task.metBy.length === 0 || task.trigger === undefined || doings === undefined) return record;
  const cited = new Set(record.flatMap(entriesOf));
  const ofParts = task.metBy.flatMap((part) => (world.realDoings.get(part) ?? []).filter(({ entries: [by = ''] }) => cited.has(by)));
  if (ofParts.length === 0) return record;
  const first = ofParts.reduce((day, { when }) => Math.min(day, when?.day ?? -Infinity), Infinity);
  const wholes = doings.filter(({ when }) => (when?.day ?? -Infinity) >= first).flatMap(({ entries }) => entries);
  return record.map((seen) => (seen.node === task.trigger ? { ...seen, entries: [...new Set([...seen.entries, ...wholes])] } : seen));
}

/** Every entry that an observation cites. */
export function entriesOf({ entries, limit, shares }: Observation): readonly EntryId[] {
  return [...entries, ...(limit?.base?.entries ?? []), ...(limit?.now?.entries ?? []), ...(shares ?? []).flatMap((share) => share.entries)];
}
