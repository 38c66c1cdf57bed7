/**
 * What the rules of a schedule can come to: the parts that its worked examples ought to show.
 */
import { assertNever } from '../base/assert-never.js';
import { placeOf } from '../explain/rule-outline.js';
import { partsOf } from '../graph/node-references.js';
import type { Node, NodeId, RuleGraph, Task } from '../graph/rule-graph.js';
import type { CoverageItem, CoverageKind, CoverageOutcome } from './report.js';

/** How an item is told in the record of a run. */
export type Sign =
  | { readonly is: 'node'; readonly task: string | null; readonly node: NodeId }
  | { readonly is: 'band'; readonly task: string; readonly reads: number; readonly rule: number }
  | { readonly is: 'class'; readonly defect: string; readonly class: string };

/** A part to look for. */
export interface Wanted {
  readonly kind: CoverageKind;
  readonly of: string;
  readonly sign: Sign;
  readonly place: CoverageItem['place'];
  readonly outcomes: readonly CoverageOutcome[];
}

/**
 * All parts, in the order of the schedule. What an attachment's own schedule says is left to the examples in that schedule, and what
 * positions a task needs is no condition on when it is due.
 */
export function partsToShow(graph: RuleGraph): readonly Wanted[] {
  return [
    ...graph.stops.flatMap((stop) => inNodes(graph, null, stop.id, [stop.condition])),
    ...graph.defects
      .filter(({ id }) => !id.includes('.'))
      .flatMap((defect) =>
        defect.classes.map(({ name }): Wanted => {
          const origin = defect.rules.find((rule) => rule.class === name)?.origin ?? defect.origin;
          return {
            kind: 'defect class',
            of: defect.id,
            sign: { is: 'class', defect: defect.id, class: name },
            place: { ...placeOf(graph, origin), text: name },
            outcomes: ['came up'],
          };
        }),
      ),
    ...graph.tasks.filter((task) => task.attachment === undefined).flatMap((task) => inTask(graph, task)),
  ];
}

function inTask(graph: RuleGraph, task: Task): readonly Wanted[] {
  const bands = task.reads.flatMap(({ rules }, reads) =>
    rules.map(({ origin }, rule): Wanted => ({
      kind: 'band',
      of: task.id,
      sign: { is: 'band', task: task.id, reads, rule },
      place: placeOf(graph, origin),
      outcomes: ['came up'],
    })),
  );
  return [...inNodes(graph, task.id, task.id, [task.trigger, task.gate]), ...bands];
}

function inNodes(graph: RuleGraph, task: string | null, of: string, ids: readonly (NodeId | undefined)[]): readonly Wanted[] {
  return ids.flatMap((id) => {
    const node = id === undefined ? undefined : graph.nodes[id];
    if (node === undefined) return [];
    const found = wantedOf(node);
    const here: readonly Wanted[] =
      found === null ? [] : [{ ...found, of, sign: { is: 'node', task, node: node.id }, place: placeOf(graph, node.origin) }];
    return [...here, ...inNodes(graph, task, of, partsOf(node))];
  });
}

/** Of conditions only the facts: what `and`, `or` and `not` make of them follows. */
function wantedOf(node: Node): Pick<Wanted, 'kind' | 'outcomes'> | null {
  switch (node.kind) {
    case 'interval':
    case 'duty-mix':
    case 'stages':
    case 'marks':
    case 'calendar-marks':
    case 'calendar-window':
    case 'sooner':
      return { kind: 'limit', outcomes: ['not reached', 'reached'] };
    case 'event':
    case 'asked':
      return node.within === undefined
        ? { kind: 'occasion', outcomes: ['came up'] }
        : { kind: 'limit', outcomes: ['not reached', 'reached'] };
    case 'occasion':
    case 'shortly-before':
    case 'attaching':
    case 'refuelling':
      return { kind: 'occasion', outcomes: ['came up'] };
    case 'compare':
    case 'trend':
    case 'age':
    case 'idle':
      return { kind: 'condition', outcomes: ['true', 'false', 'unknown'] };
    case 'recent':
      return {
        kind: 'condition',
        outcomes: node.within === undefined || node.within.on === 'calendar' ? ['true', 'false'] : ['true', 'false', 'unknown'],
      };
    // What was never put on record stands at rest, is off, closed, or not going on: these are never unknown.
    case 'position-is':
    case 'attachment-is':
    case 'defect-is':
    case 'duty-is':
    case 'unworked':
    case 'at-work':
    case 'season':
      return { kind: 'condition', outcomes: ['true', 'false'] };
    case 'first':
    case 'whichever':
    case 'any':
    case 'when':
    case 'while':
    case 'and':
    case 'or':
    case 'not':
      return null;
    default:
      return assertNever(node);
  }
}
