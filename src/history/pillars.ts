/** What the totals of a meter rest on besides the readings themselves: dials that were taken out or set back. */
import type { Dial } from './dial.js';
import type { EntryId } from './entry.js';

/** Most entries that a point lists as those it rests on. */
const MOST_PILLARS = 600;

/** The list with more in it, each once; up to a bound, which no real machine's meters come near and no made-up history gets past. */
export function grown(pillars: readonly EntryId[], ...more: readonly EntryId[]): readonly EntryId[] {
  return pillars.length >= MOST_PILLARS ? pillars : [...new Set([...pillars, ...more])];
}

/**
 * What a reading rests on besides itself: every dial before it; and where it is held against another, what that leans on, for a total that is too
 * low or too high rests on both.
 */
export function pillarsOf(dial: Dial, reading: EntryId, against: readonly EntryId[] = dial.pillars): readonly EntryId[] {
  return others(against === dial.pillars ? against : grown(dial.pillars, ...against), reading);
}

/** The same list where the entry is not in it: thousands of readings may share one. */
export function others(ids: readonly EntryId[], entry: EntryId): readonly EntryId[] {
  return ids.includes(entry) ? ids.filter((id) => id !== entry) : ids;
}
