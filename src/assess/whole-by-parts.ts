/** Tasks that are `met by` others: when they count as done, and what a record must show besides (docs/meaning.md §3). */
import type { Task } from '../graph/rule-graph.js';
import type { EntryId } from '../history/entry.js';
import type { Observation } from './assessment.js';
import { citedBy } from './cited-by.js';
import { compareDoings, type EffectiveDoing, realDoings } from './doings.js';
import type { World } from './world.js';

/** `met by A, B`: done at the moment by which each part has been done since the last time. What one entry names was done at once. */
export function doingsByParts(world: World, parts: readonly string[], outright: readonly EffectiveDoing[]): readonly EffectiveDoing[] {
  const whole: EffectiveDoing[] = [];
  const wholes = outright.map((doing) => ({ part: null as string | null, doing }));
  const events = [...wholes, ...parts.flatMap((part) => realDoings(world, part).map((doing) => ({ part, doing })))];
  events.sort((a, b) => compareDoings(a.doing, b.doing));
  let since = new Map<string, EffectiveDoing>();
  for (const [first, ...others] of atOnce(events)) {
    if (first === undefined) continue;
    const together = [first, ...others];
    const now = new Map(together.flatMap(({ part, doing }) => (part === null ? [] : [[part, doing] as const])));
    // Of several doings of a part the first is enough, unless the entry that completes the whole names it too.
    since = new Map([...now, ...since]);
    const isOutright = together.some(({ part }) => part === null);
    if (!isOutright && since.size < parts.length) continue;
    // The entry that completes it goes first: it is the one that says when.
    const all = [first.doing, ...new Map([...since, ...now]).values()];
    if (!isOutright) whole.push({ ...first.doing, entries: [...new Set(all.flatMap((each) => each.entries))] });
    since = new Map();
  }
  return whole;
}

/** Neighbours that the same entry states, together. */
function atOnce<T extends { readonly doing: EffectiveDoing }>(events: readonly T[]): readonly (readonly T[])[] {
  const groups: T[][] = [];
  for (const event of events) {
    const group = groups.at(-1);
    if (group?.[0] !== undefined && group[0].doing.entries[0] === event.doing.entries[0]) group.push(event);
    else groups.push([event]);
  }
  return groups;
}

/**
 * The record with the doings of the whole that came after the first doing of a part that it cites, and likewise of parts that are wholes themselves.
 *
 * A doing of a whole lets its parts begin anew. An entry that is cited for something else may be a doing of a part; with the doings of the
 * whole left out, such entries could make up one that never was.
 */
export function withWholes(world: World, task: Task, record: readonly Observation[]): readonly Observation[] {
  if (task.trigger === undefined) return record;
  const cited = new Set(citedBy(world, record));
  const inner = task.metBy.flatMap((part) => world.index.tasks.get(part) ?? []);
  // From within: a doing of a part that is cited so may be one that the whole has to be cited for.
  const wholes = [...inner, task].flatMap((whole) => {
    const found = doingsSinceParts(world, whole, cited);
    for (const id of found) cited.add(id);
    return found;
  });
  if (wholes.length === 0) return record;
  return record.map((seen) => (seen.node === task.trigger ? { ...seen, entries: [...new Set([...seen.entries, ...wholes])] } : seen));
}

/** What tells of the doings of a whole since the first doing of a part that is cited. */
function doingsSinceParts(world: World, whole: Task, cited: ReadonlySet<EntryId>): readonly EntryId[] {
  const ofParts = whole.metBy.flatMap((part) => (world.realDoings.get(part) ?? []).filter(({ entries: [by = ''] }) => cited.has(by)));
  if (ofParts.length === 0) return [];
  const first = ofParts.reduce((day, { when }) => Math.min(day, when?.day ?? -Infinity), Infinity);
  const doings = world.realDoings.get(whole.id) ?? [];
  return doings.filter(({ when }) => (when?.day ?? -Infinity) >= first).flatMap(({ entries }) => entries);
}
