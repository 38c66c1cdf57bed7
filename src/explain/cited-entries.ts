/**
 * The entries that a task's answer rests on.
 */
import type { Assessment, Observation } from '../assess/assessment.js';
import { compareTexts } from '../base/compare-texts.js';
import type { EntryId } from '../history/entry.js';
import { gather } from '../base/gather.js';
import { compareMoments } from '../values/moment.js';
import type { CitedEntry } from './explanation.js';
import type { KnownHistory } from './known-history.js';

/**
 * Every entry that some observation of the task rests on, with those that keep a suspect reading in them from counting, of a meter that the rules
 * speak of; in the order in which they happened.
 */
export function citedEntries(
  observations: readonly Observation[],
  setAside: Assessment['setAside'],
  speaksOf: (meter: string) => boolean,
  history: KnownHistory,
): readonly CitedEntry[] {
  const ids = new Map<EntryId, EntryId | null>();
  for (const { entries } of observations) for (const id of entries) ids.set(id, null);
  if (setAside.some(({ entry, suspect }) => suspect !== undefined && ids.has(entry))) addRefuting(ids, setAside, speaksOf);
  const found: CitedEntry[] = [];
  for (const [id, refutes] of ids) {
    const cited = history.get(id)?.cited ?? null;
    if (cited !== null) found.push(asCited(cited, refutes, ids));
  }
  return found.length < 2 ? found : found.sort(inOrder);
}

/** A map is walked in the order of its growth, so that a reading that disagrees with another is looked at itself. */
function addRefuting(ids: Map<EntryId, EntryId | null>, setAside: Assessment['setAside'], speaksOf: (meter: string) => boolean): void {
  const suspects = gather(
    setAside.filter(({ suspect }) => suspect !== undefined && speaksOf(suspect.meter)),
    ({ entry }) => entry,
  );
  for (const id of ids.keys()) {
    for (const { suspect } of suspects.get(id) ?? []) {
      if (suspect === undefined) continue;
      for (const against of [suspect.against, ...(suspect.alongside ?? [])]) if (!ids.has(against)) ids.set(against, id);
    }
  }
}

function asCited(cited: CitedEntry, refutes: EntryId | null, ids: ReadonlyMap<EntryId, unknown>): CitedEntry {
  const { entry } = cited;
  const confirms = entry.kind === 'confirm' && ids.has(entry.entry);
  if (refutes === null && !confirms) return cited;
  return { ...cited, ...(refutes === null ? {} : { refutes }), ...(confirms ? { confirms: entry.entry } : {}) };
}

function inOrder(a: CitedEntry, b: CitedEntry): number {
  return compareMoments(a.when, b.when) || compareTexts(a.id, b.id);
}
