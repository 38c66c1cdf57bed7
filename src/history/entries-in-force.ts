import type { Moment } from '../values/moment.js';
import { countsAt } from '../values/moment.js';
import { compareDated, dateEntry } from './dated-entry.js';
import type { Dated } from './dated-entry.js';
import type { Entry, EntryId } from './entry.js';
import type { Facts } from './facts.js';
import type { StraySink } from './stray.js';

/** What of a set of entries counts at a moment. */
export interface EntriesInForce {
  /** In order; without voided entries and entries dated after now. Voids and confirmations are among them for what they note besides. */
  readonly entries: readonly Dated[];
  /** Entry → the confirmation that speaks for it (the first in order, if several do). */
  readonly confirmations: ReadonlyMap<EntryId, EntryId>;
}

/** Sorts out what counts at `now`: one entry per id, nothing dated after it, nothing voided. */
export function entriesInForce(
  { sameId, corrections }: Pick<Partial<Facts>, 'sameId' | 'corrections'>,
  all: readonly Entry[],
  now: Moment,
  strays: StraySink,
): EntriesInForce {
  const unique = sameId?.(all, strays) ?? all;
  const seen = datedEntries(unique, strays)
    .filter(({ when }) => countsAt(when, now))
    .sort(compareDated);
  if (corrections === undefined) return { entries: seen, confirmations: new Map() };
  const known = new Set(unique.map(({ id }) => id));
  const voided = corrections.voided(seen, known, strays);
  const standing = seen.filter(({ entry }) => !voided.has(entry.id));
  return { entries: standing, confirmations: corrections.confirmed(standing, known, strays) };
}

function datedEntries(entries: readonly Entry[], strays: StraySink): Dated[] {
  return entries.flatMap((entry) => {
    const dated = dateEntry(entry);
    if (dated === null) strays.report(entry.id, `There is no day ${entry.on}`);
    return dated === null ? [] : [dated];
  });
}
