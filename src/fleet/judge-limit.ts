import type { LimitPlan } from './column-plan.js';
import { type FleetStates, HELD, UNRECORDED, WORK } from './fleet-states.js';
import { type LimitEdges, stateOf } from './limit-edges.js';
import type { MachineColumns } from './machine-columns.js';

/**
 * One limit, all machines whose due point is known. Of the others only `left` is right: NaN.
 *
 * @param now today for a limit of days; 0 for one on a meter, whose due point counts from where the meter stands.
 */
export function judgeLimit(
  columns: MachineColumns,
  edges: LimitEdges,
  now: number,
  task: number,
  limit: LimitPlan,
  answer: FleetStates,
): void {
  const { due, count, stride } = columns;
  const { state, left, governing, flags } = answer;
  const { slot, node } = limit;
  const [lead, edge, late, hold] = [edges.lead[slot] ?? 0, edges.edge[slot] ?? 0, edges.late[slot] ?? 0, edges.hold[slot] ?? 0];
  const [from, out] = [slot * stride, task * stride];
  for (let m = 0; m < count; m += 1) {
    const rest = (due[from + m] as number) - now;
    const is = stateOf(rest, lead, edge, late);
    state[out + m] = is;
    left[out + m] = rest;
    governing[out + m] = node;
    flags[m] = (flags[m] as number) | (Number(is >= UNRECORDED) * WORK) | (Number(rest < hold) * HELD);
  }
}
