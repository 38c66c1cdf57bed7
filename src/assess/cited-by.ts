import type { EntryId } from '../history/entry.js';
import type { Observation } from './assessment.js';
import type { World } from './world.js';

/**
 * Every entry that a record cites, and those that are cited with it: they keep a suspect reading in one of them from counting, of a meter that the
 * rules speak of.
 */
export function citedBy({ index, timeline }: World, record: readonly Observation[]): ReadonlySet<EntryId> {
  const cited = new Set(record.flatMap(entriesOf));
  const suspects = timeline.suspects.filter(({ entry }) => cited.has(entry));
  if (suspects.length === 0) return cited;
  const rules = JSON.stringify(record.map(({ node }) => index.graph.nodes[node]));
  for (const { meter, against } of suspects)
    if (rules.includes(JSON.stringify(meter)) || rules.includes('"kind":"sooner"')) cited.add(against);
  return cited;
}

function entriesOf({ entries, limit, shares }: Observation): readonly EntryId[] {
  return [...entries, ...(limit?.base?.entries ?? []), ...(limit?.now?.entries ?? []), ...(shares ?? []).flatMap((share) => share.entries)];
}
