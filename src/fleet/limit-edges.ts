import type { LimitPlan } from './column-plan.js';
import { CLEAR, COMING_UP, DUE, OVERDUE } from './fleet-states.js';

/**
 * By slot of a limit, how much is left of it where its state changes: ticks or days.
 *
 * In typed arrays, so that whoever takes them out has doubles to keep in registers, whatever the numbers are.
 *
 * INVARIANT: `lead` ≥ `edge` ≥ `late` for every slot; {@link stateOf} counts the edges that are behind.
 */
export class LimitEdges {
  /** Coming up at this much or less. */
  readonly lead: Float64Array;
  /** Due at this much or less: whole numbers are left, so that a half tells "at" from "beyond". */
  readonly edge: Float64Array;
  /** Overdue below this much. */
  readonly late: Float64Array;
  /** Held below this much; −Infinity without a hard stop. */
  readonly hold: Float64Array;

  constructor(limits: readonly LimitPlan[]) {
    this.edge = Float64Array.from(limits, ({ strict }) => (strict ? -0.5 : 0));
    this.late = Float64Array.from(limits, ({ late }, slot) => Math.min(-late, this.edge[slot] ?? 0));
    this.lead = Float64Array.from(limits, ({ lead }, slot) => Math.max(lead, this.edge[slot] ?? 0));
    this.hold = Float64Array.from(limits, ({ holdAfter }) => (holdAfter === null ? -Infinity : -holdAfter));
  }
}

/**
 * The state of a limit of which so much is left, counted up from `CLEAR` without a branch: which states a fleet's machines are in
 * follows no pattern that a processor could guess. NaN comes to `CLEAR`; whoever may have one looks at it again.
 */
export function stateOf(left: number, lead: number, edge: number, late: number): number {
  return (
    CLEAR + Number(left <= lead) * (COMING_UP - CLEAR) + Number(left <= edge) * (DUE - COMING_UP) + Number(left < late) * (OVERDUE - DUE)
  );
}
