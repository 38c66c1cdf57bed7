import { canonicalJson } from './canonical-json.js';
import type { Entry, EntryId } from './entry.js';
import type { StraySink } from './stray.js';

/**
 * One entry for each id, of logbooks that were put together: the same entry twice is one entry. Two that differ under one id are both set aside, for
 * nothing says which is right.
 */
export function oneForEachId(all: readonly Entry[], strays: StraySink): readonly Entry[] {
  const unique = new Map<EntryId, Entry>();
  const clashing = new Set<EntryId>();
  for (const entry of all) {
    const there = unique.get(entry.id);
    if (there === undefined) unique.set(entry.id, entry);
    else if (there !== entry && canonicalJson(there) !== canonicalJson(entry)) clashing.add(entry.id);
  }
  for (const id of clashing) {
    unique.delete(id);
    strays.report(id, 'Two different entries have this id; neither is used');
  }
  return [...unique.values()];
}
