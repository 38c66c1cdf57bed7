import type { EntryId } from './entry.js';

/** Most entries that a point lists as those it rests on. */
const MOST_PILLARS = 600;

/** The list with more in it, each once; up to a bound, which no real machine's meters come near and no made-up history gets past. */
export function grown(pillars: readonly EntryId[], ...more: readonly EntryId[]): readonly EntryId[] {
  return pillars.length >= MOST_PILLARS ? pillars : [...new Set([...pillars, ...more])];
}
