import type { EntryId } from '../history/entry.js';
import { gather } from '../base/gather.js';
import type { Observation } from './assessment.js';
import type { World } from './world.js';

/**
 * Every entry that a record cites, and those that are cited with it: they keep a suspect reading in one of them from counting, of a meter that the
 * rules speak of; the fall of a level goes by hours without naming their meter.
 */
export function citedBy({ index, timeline }: World, record: readonly Observation[]): ReadonlySet<EntryId> {
  const cited = new Set(record.flatMap(({ entries }) => entries));
  if (timeline.suspects.every(({ entry }) => !cited.has(entry))) return cited;
  const rules = record.flatMap(({ node }) => index.graph.nodes[node] ?? []);
  const isOfFall = rules.some(({ kind }) => kind === 'sooner');
  const spoken = gather(
    timeline.suspects.filter(({ meter }) => isOfFall || speaksOf(rules, meter)),
    ({ entry }) => entry,
  );
  // A set is walked in the order of its growth: what disagrees with a reading may be one that does not count itself.
  for (const id of cited)
    for (const { against, alongside } of spoken.get(id) ?? []) [against, ...alongside].forEach((each) => cited.add(each));
  return cited;
}

/** Whether a meter is named anywhere in a rule. */
function speaksOf(rule: unknown, meter: string): boolean {
  if (typeof rule !== 'object' || rule === null) return rule === meter;
  return Object.values(rule).some((part) => speaksOf(part, meter));
}
