/**
 * The entries that a task's answer rests on.
 */
import type { Observation } from '../assess/assessment.js';
import { eachEntryOf } from '../assess/cited-by.js';
import { compareTexts } from '../base/compare-texts.js';
import type { EntryId } from '../history/entry.js';
import { compareMoments } from '../values/moment.js';
import type { CitedEntry } from './explanation.js';
import type { KnownHistory } from './known-history.js';

const NONE: readonly EntryId[] = [];

/**
 * Every entry that some observation of the task rests on, with those that keep a suspect reading in them from counting (`suspects`: by which
 * each is refuted), in the order in which they happened.
 */
export function citedEntries(
  observations: readonly Observation[],
  suspects: ReadonlyMap<EntryId, readonly EntryId[]>,
  history: KnownHistory,
): readonly CitedEntry[] {
  const ids = new Map<EntryId, EntryId | null>();
  const add = (id: EntryId): unknown => ids.set(id, null);
  for (const seen of observations) eachEntryOf(seen, add);
  // A map is walked in the order of its growth, so that what is added here is looked at too.
  if (suspects.size > 0) {
    for (const id of ids.keys()) {
      for (const against of suspects.get(id) ?? NONE) if (!ids.has(against)) ids.set(against, id);
    }
  }
  const found: CitedEntry[] = [];
  for (const [id, refutes] of ids) {
    const cited = history.get(id)?.cited ?? null;
    if (cited !== null) found.push(asCited(cited, refutes, ids));
  }
  return found.sort(inOrder);
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
