import type { Moment } from '../values/moment.js';
import { countsAt } from '../values/moment.js';
import { canonicalJson } from './canonical-json.js';
import { compareDated, dateEntry, ofKind } from './dated-entry.js';
import type { Dated } from './dated-entry.js';
import type { Entry, EntryId } from './entry.js';
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
export function entriesInForce(all: readonly Entry[], now: Moment, strays: StraySink): EntriesInForce {
  const unique = oneForEachId(all, strays);
  const seen = datedEntries([...unique.values()], strays)
    .filter(({ when }) => countsAt(when, now))
    .sort(compareDated);
  const voided = voidedEntries(seen, unique, strays);
  const standing = seen.filter(({ entry }) => !voided.has(entry.id));
  return {
    entries: standing,
    confirmations: confirmedEntries(standing, unique, strays),
  };
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

/**
 * Which entries are voided: those named by a void that is not itself voided.
 *
 * Each void names one entry, so voids form chains; a chain is settled from its free end. What is left over runs in a circle,
 * where nothing says which end is free: none of those voids counts.
 */
function voidedEntries(seen: readonly Dated[], known: ReadonlyMap<EntryId, Entry>, strays: StraySink): ReadonlySet<EntryId> {
  const voids = new Map(ofKind(seen, 'void').map(({ entry }) => [entry.id, entry]));
  const namers = new Map<EntryId, number>();
  for (const { entry: target } of voids.values()) namers.set(target, (namers.get(target) ?? 0) + 1);
  const voided = new Set<EntryId>();
  const settled = new Set<EntryId>();
  const free = [...voids.keys()].filter((id) => !namers.has(id));
  for (let id = free.pop(); id !== undefined; id = free.pop()) {
    const target = voids.get(id)?.entry;
    if (target === undefined || settled.has(id)) continue;
    settled.add(id);
    if (!known.has(target)) strays.report(id, `There is no entry \`${target}\` to void`);
    const left = (namers.get(target) ?? 1) - 1;
    namers.set(target, left);
    if (!voided.has(id)) voided.add(target);
    // A void is settled once one that counts names it, or once none of those that name it is open any more.
    if (voids.has(target) && (voided.has(target) || left === 0)) free.push(target);
  }
  for (const id of voids.keys()) {
    if (!settled.has(id)) strays.report(id, 'This void and the entry it names void each other; neither counts as a void');
  }
  return voided;
}

function confirmedEntries(
  standing: readonly Dated[],
  known: ReadonlyMap<EntryId, Entry>,
  strays: StraySink,
): ReadonlyMap<EntryId, EntryId> {
  const confirmations = new Map<EntryId, EntryId>();
  for (const { entry } of ofKind(standing, 'confirm')) {
    if (!known.has(entry.entry)) strays.report(entry.id, `There is no entry \`${entry.entry}\` to confirm`);
    else if (!confirmations.has(entry.entry)) confirmations.set(entry.entry, entry.id);
  }
  return confirmations;
}
