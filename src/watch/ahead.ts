/**
 * Where on an axis something may change: the points that a state can turn at, gathered from the record of an assessment and from the
 * rules. More of them than needed does no harm (each is looked at), one too few would.
 */
import { assertNever } from '../base/assert-never.js';
import type { Assessment, DuePoint, LimitFacts, Observation } from '../assess/assessment.js';
import type { LateHold, Margin, Node, RuleGraph } from '../graph/rule-graph.js';

/** What is observed of one node, with the node. */
export interface Seen {
  readonly node: Node;
  readonly observation: Observation;
}

/** Everything that a run looked at. */
export function everythingSeen(graph: RuleGraph, { record, stopRecord }: Assessment): readonly Seen[] {
  return [...stopRecord, ...Object.values(record).flat()].flatMap((observation) => {
    const node = graph.nodes[observation.node];
    return node === undefined ? [] : [{ node, observation }];
  });
}

/**
 * The values at which a judged limit turns, in the numbers of its axis: coming up, due (or just beyond), overdue, held. `one` is the
 * smallest step of the axis.
 */
export function turns(node: Node, limit: LimitFacts, one: number): readonly number[] {
  const [due, late, lead] = [limit.due, limit.overdueAfter, limit.comingUpFrom].map((point) => (point === null ? null : valueOf(point)));
  if (due === null || due === undefined) return [];
  const { late: margin, hold } = node as { readonly late?: Margin; readonly hold?: LateHold };
  // A window is overdue after its month, and held so much after that.
  const window = late === null || late === undefined ? 0 : Math.max(0, late - due - (margin?.size ?? 0));
  const holds = hold === undefined ? [] : [due + hold.after.size + one, due + hold.after.size + window + one];
  return [
    ...(lead === null || lead === undefined ? [] : [lead]),
    due,
    due + one,
    ...(late === null || late === undefined ? [] : [late + one]),
    ...holds,
  ];
}

/** A point as a number: ticks, days, or minutes since 1970-01-01. */
export function valueOf(point: DuePoint): number {
  switch (point.on) {
    case 'meter':
    case 'work':
      return point.ticks;
    case 'calendar':
      return point.day;
    case 'moment':
      return point.at.day * 1440 + (point.at.minute ?? 0);
    default:
      return assertNever(point);
  }
}
