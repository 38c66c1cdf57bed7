/**
 * Where on an axis something may change: the points that a state can turn at, gathered from the record of an assessment and from the
 * rules. More of them than needed does no harm (each is looked at), one too few would.
 */
import { firstMinute } from '../values/moment.js';
import { assertNever } from '../base/assert-never.js';
import { marginAfter } from '../graph/calendar-amount.js';
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
  const { hold } = node as { readonly hold?: LateHold };
  const holds = hold === undefined ? [] : holdsAt(node, limit, due, hold.after).map((value) => value + one);
  return [
    ...(lead === null || lead === undefined ? [] : [lead]),
    due,
    due + one,
    ...(late === null || late === undefined ? [] : [late + one]),
    ...holds,
  ];
}

/** Where a hard stop may begin: so much after the due point, or after the end of its month. */
function holdsAt(node: Node, { due: point }: LimitFacts, due: number, margin: Margin): readonly number[] {
  if (point?.on === 'moment') return [due + margin.size * 1440];
  if (point?.on !== 'calendar') return [due + margin.size];
  const month = node.kind === 'calendar-window' ? [27, 28, 29, 30] : [];
  return [0, ...month].map((days) => marginAfter(due + days, margin));
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
      return firstMinute(point.at);
    default:
      return assertNever(point);
  }
}
