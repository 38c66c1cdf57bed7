import type { RuleGraph } from '../graph/rule-graph.js';
import type { Entry } from '../history/entry.js';
import { engineWith } from './engine-with.js';
import { type KindSetName, kindSets } from './kind-sets.js';

/**
 * The sets of kinds that a schedule takes, and a history with it: as few as do, in the order of `kindSets`.
 *
 * For whoever builds an engine, not for the page that runs it: it holds all of them.
 *
 * @example kindsOf(graph) // ['intervals', 'calendar', 'stagedServices']
 */
export function kindsOf(graph: RuleGraph, entries: readonly Entry[] = []): readonly KindSetName[] {
  const names = Object.keys(kindSets) as KindSetName[];
  const setsOf = (chosen: readonly KindSetName[]) => chosen.map((name) => kindSets[name]);
  const lacksWith = (chosen: readonly KindSetName[]): number => engineWith(setsOf(chosen)).lacks(graph, entries).length;
  // Each set that can be done without is left out in its turn, from the last on.
  return names.reduceRight<readonly KindSetName[]>((kept, name) => {
    const without = kept.filter((each) => each !== name);
    return lacksWith(without) === 0 ? without : kept;
  }, names);
}
