import type { Moment } from '../values/moment.js';
import { countsAt } from '../values/moment.js';
import { canonicalJson } from './canonical-json.js';
import { compareDated, dateEntry } from './dated-entry.js';
import type { Dated } from './dated-entry.js';
import type { Entry, EntryId } from './entry.js';
import type { CorrectionFacts } from './facts.js';
import type { StraySink } from './stray.js';

/** What of a set of entries counts at a moment. */
export interface EntriesInForce {
  /** In order; without voided entries and entries dated after now. Voids and confirmations are among them for what they note besides. */
  readonly entries: readonly Dated[];
  /** Entry → the confirmation that speaks for it (the first in order, if several do). */
  readonly confirmations: ReadonlyMap<EntryId, EntryId>;
}

/**
 * Sorts out what counts at `now`: one entry per id, nothing dated after it, nothing voided.
 *
 * The same entry twice is one entry. Two that differ under one id are both set aside, for nothing says which is right.
 */
export function entriesInForce(
  all: readonly Entry[],
  now: Moment,
  strays: StraySink,
  corrections: CorrectionFacts | undefined,
): EntriesInForce {
  const unique = oneForEachId(all, strays);
  const seen = datedEntries([...unique.values()], strays)
    .filter(({ when }) => countsAt(when, now))
    .sort(compareDated);
  if (corrections === undefined) return { entries: seen, confirmations: new Map() };
  const voided = corrections.voided(seen, unique, strays);
  const standing = seen.filter(({ entry }) => !voided.has(entry.id));
  return { entries: standing, confirmations: corrections.confirmed(standing, unique, strays) };
}

function oneForEachId(all: readonly Entry[], strays: StraySink): ReadonlyMap<EntryId, Entry> {
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
  return unique;
}

function datedEntries(entries: readonly Entry[], strays: StraySink): Dated[] {
  return entries.flatMap((entry) => {
    const dated = dateEntry(entry);
    if (dated === null) strays.report(entry.id, `There is no day ${entry.on}`);
    return dated === null ? [] : [dated];
  });
}
