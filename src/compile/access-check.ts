/**
 * What goes through every stance of the machine, as a check of the compiled graph.
 */
import type { AccessFault, AccessFaultKind } from '../access/access-fault.js';
import { checkAccess } from '../access/check-access.js';
import type { Code } from '../diagnostics/catalogue-entry.js';
import { accessCodes } from '../diagnostics/codes/access.js';
import type { GraphCheck, GraphFinding } from './graph-finding.js';

const entries: Readonly<Record<AccessFaultKind, Code>> = {
  'out-of-reach': accessCodes.outOfReach,
  'dead-end': accessCodes.deadEnd,
  'forbidden-from-the-start': accessCodes.forbiddenFromTheStart,
  'idle-step': accessCodes.idleStep,
  'under-raised-part': accessCodes.underRaisedPart,
  'no-way-to-walk': accessCodes.noWayToWalk,
  'too-many-stances': accessCodes.tooManyStances,
  'tangled-condition': accessCodes.tangledCondition,
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
