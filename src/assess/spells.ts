/** The entries that a spell rests on: an attachment that is on, a defect that is open, storage (docs/meaning.md §5). */
import type { EntryId } from '../history/entry.js';
import type { Spell } from '../history/timeline.js';

/**
 * What the beginning of the last spell rests on.
 *
 * On a day whose minutes do not tell, what was on ended before it began again: so where one spell ended on the day on which the next began, it
 * takes the one before to know that.
 */
export function begunBy(spells: readonly Spell[] | undefined): readonly EntryId[] {
  const last = spells?.at(-1);
  if (spells === undefined || last === undefined) return [];
  const before = spells.at(-2);
  if (before?.end == null || before.end.when.day !== last.begin.when.day) return [last.begin.entry];
  return [...begunBy(spells.slice(0, -1)), before.end.entry, last.begin.entry];
}
