import type { EntryId } from '../history/entry.js';
import type { Observation } from './assessment.js';
import type { World } from './world.js';

/**
 * Every entry that a record cites, and those that are cited with it: they keep a suspect reading in one of them from counting, of a meter that the
 * rules speak of; the fall of a level goes by hours without naming their meter.
 */
export function citedBy({ index, timeline }: World, record: readonly Observation[]): ReadonlySet<EntryId> {
  const cited = new Set(record.flatMap(entriesOf));
  const suspects = timeline.suspects.filter(({ entry }) => cited.has(entry));
  if (suspects.length === 0) return cited;
  const rules = record.flatMap(({ node }) => index.graph.nodes[node] ?? []);
  const isOfFall = rules.some(({ kind }) => kind === 'sooner');
  for (const { meter, against } of suspects) if (isOfFall || speaksOf(rules, meter)) cited.add(against);
  return cited;
}

function entriesOf({ entries, limit, shares }: Observation): readonly EntryId[] {
  return [...entries, ...(limit?.base?.entries ?? []), ...(limit?.now?.entries ?? []), ...(shares ?? []).flatMap((share) => share.entries)];
}

/** Whether a meter is named anywhere in a rule. */
function speaksOf(rule: unknown, meter: string): boolean {
  if (typeof rule !== 'object' || rule === null) return rule === meter;
  return Object.values(rule).some((part) => speaksOf(part, meter));
}
