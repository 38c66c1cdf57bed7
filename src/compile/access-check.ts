/**
 * What goes through every stance of the machine, as a check of the compiled graph.
 */
import type { AccessFault, AccessFaultKind } from '../access/access-fault.js';
import { checkAccess } from '../access/check-access.js';
import type { CatalogueEntry } from '../diagnostics/catalogue-entry.js';
import { accessCatalogue } from '../diagnostics/catalogue/access.js';
import type { GraphCheck, GraphFinding } from './graph-finding.js';

const entries: Readonly<Record<AccessFaultKind, CatalogueEntry>> = {
  'out-of-reach': accessCatalogue.outOfReach,
  'dead-end': accessCatalogue.deadEnd,
  'forbidden-from-the-start': accessCatalogue.forbiddenFromTheStart,
  'idle-step': accessCatalogue.idleStep,
  'under-raised-part': accessCatalogue.underRaisedPart,
  'no-way-to-walk': accessCatalogue.noWayToWalk,
  'too-many-stances': accessCatalogue.tooManyStances,
  'tangled-condition': accessCatalogue.tangledCondition,
};

/** An attachment's schedule by itself has nothing to be reached from: it is checked with the machine. */
export const accessCheck: GraphCheck = (graph) =>
  graph.access.parts.length === 0 && graph.access.walks.length === 0 ? [] : checkAccess(graph).map(findingOf);

function findingOf(fault: AccessFault): GraphFinding {
  const way = fault.way.length === 0 ? '' : `From rest: ${fault.way.join(' → ')}. `;
  return {
    entry: entries[fault.kind],
    message: fault.message,
    at: fault.at,
    ...(fault.rule === undefined ? {} : { labels: [{ at: fault.rule.at, text: fault.rule.text }] }),
    help: way + fault.help,
  };
}
