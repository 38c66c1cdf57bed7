import type { LimitPlan } from './column-plan.js';
import { DUE, type FleetStates, UNRECORDED, WORK } from './fleet-states.js';
import { type LimitEdges, stateOf } from './limit-edges.js';
import type { MachineColumns } from './machine-columns.js';

/**
 * Whichever of two intervals comes first, not both of days and neither with a hard stop: all machines whose due points are known. Of
 * the others only `left` is right: NaN.
 *
 * Which of two equal states governs is said by the day on which each was reached, or else by the share used of each
 * (docs/meaning.md §4). Both are worked out and one is picked, because a branch would be guessed wrong as often as not.
 *
 * @param oneNow today for a limit of days; 0 for one on a meter, whose due point counts from where the meter stands.
 * @param twoNow likewise.
 */
export function judgePair(
  columns: MachineColumns,
  edges: LimitEdges,
  oneNow: number,
  twoNow: number,
  task: number,
  one: LimitPlan,
  two: LimitPlan,
  answer: FleetStates,
): void {
  const { due, span, reach, count, stride } = columns;
  const { state, left, governing, flags } = answer;
  const [a, b] = [one.slot, two.slot];
  const [aLead, aEdge, aLate, aNode] = [edges.lead[a] ?? 0, edges.edge[a] ?? 0, edges.late[a] ?? 0, one.node];
  const [bLead, bEdge, bLate, bNode] = [edges.lead[b] ?? 0, edges.edge[b] ?? 0, edges.late[b] ?? 0, two.node];
  const [aFrom, bFrom, out] = [a * stride, b * stride, task * stride];
  for (let m = 0; m < count; m += 1) {
    const aSpan = span[aFrom + m] as number;
    const bSpan = span[bFrom + m] as number;
    const aLeft = (due[aFrom + m] as number) - oneNow;
    const bLeft = (due[bFrom + m] as number) - twoNow;
    const aIs = stateOf(aLeft, aLead, aEdge, aLate);
    const bIs = stateOf(bLeft, bLead, bEdge, bLate);
    const earlier = Number((reach[bFrom + m] as number) < (reach[aFrom + m] as number));
    const moreUsed = Number((bSpan - bLeft) / bSpan > (aSpan - aLeft) / aSpan);
    const ahead = pick(Number(aIs >= DUE), moreUsed, earlier);
    const second = Number(2 * bIs + ahead > 2 * aIs);
    const is = pick(second, aIs, bIs);
    state[out + m] = is;
    left[out + m] = aLeft + second * (bLeft - aLeft);
    governing[out + m] = pick(second, aNode, bNode);
    flags[m] = (flags[m] as number) | (Number(is >= UNRECORDED) * WORK);
  }
}

/** Of two whole numbers the first for 0, the second for 1. */
function pick(second: number, one: number, two: number): number {
  return one ^ ((one ^ two) & -second);
}
