import type { EntryId } from '../history/entry.js';
import type { Observation } from './assessment.js';
import type { World } from './world.js';

/** Every entry that a record cites, and those that keep a suspect reading in one of them from counting, which are cited with it. */
export function citedBy({ timeline }: World, record: readonly Observation[]): ReadonlySet<EntryId> {
  const cited = new Set(record.flatMap(entriesOf));
  for (const { entry, against } of timeline.suspects) if (cited.has(entry)) cited.add(against);
  return cited;
}

function entriesOf({ entries, limit, shares }: Observation): readonly EntryId[] {
  return [...entries, ...(limit?.base?.entries ?? []), ...(limit?.now?.entries ?? []), ...(shares ?? []).flatMap((share) => share.entries)];
}
