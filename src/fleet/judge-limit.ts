/** The loops for the two commonest kinds of task: one limit, and whichever of two intervals comes first. */
import type { LimitPlan } from './column-plan.js';
import { CLEAR, COMING_UP, DUE, type FleetStates, HELD, HIDDEN_HOLD, OVERDUE, UNKNOWN, UNRECORDED, WORK } from './fleet-states.js';
import type { MachineColumns } from './machine-columns.js';

/** A limit as numbers that a loop can keep in registers. */
interface Numbers {
  readonly column: number;
  /** Column of where its axis stands now, in `now`. */
  readonly now: Float64Array;
  readonly nowColumn: number;
  readonly lead: number;
  /** Reached when less than this is left: whole numbers, so a half tells "at" from "beyond". */
  readonly edge: number;
  readonly late: number;
  /** Held when less than minus this is left; Infinity for no hard stop. */
  readonly hold: number;
  readonly calendar: boolean;
  /** Days from the due point of a calendar limit to the day on which it counts as reached. */
  readonly after: number;
}

/** One limit, all machines. */
export function judgeLimit(columns: MachineColumns, today: Float64Array, task: number, limit: LimitPlan, answer: FleetStates): void {
  const { due, base, count, stride } = columns;
  const { state, left, governing, flags } = answer;
  const { column, now, nowColumn, lead, edge, late, hold } = numbersOf(columns, today, limit);
  const out = task * stride;
  const { node } = limit;
  for (let m = 0; m < count; m += 1) {
    const rest = (due[column + m] as number) - (now[nowColumn + m] as number);
    let is: number;
    if (rest > lead) is = CLEAR;
    else if (rest > edge) is = COMING_UP;
    else if (rest >= -late) is = DUE;
    else if (rest < -late) is = OVERDUE;
    else is = base[column + m] === -Infinity ? UNRECORDED : UNKNOWN;
    state[out + m] = is;
    left[out + m] = rest;
    governing[out + m] = node;
    if (is >= UNRECORDED) flags[m] = (flags[m] as number) | WORK;
    if (hold !== Infinity) {
      if (rest < -hold) flags[m] = (flags[m] as number) | HELD;
      else if (is === UNKNOWN || is === UNRECORDED) flags[m] = (flags[m] as number) | HIDDEN_HOLD;
    }
  }
}

/** Whichever of two intervals without a hard stop comes first, all machines. */
export function judgePair(
  columns: MachineColumns,
  today: Float64Array,
  task: number,
  one: LimitPlan,
  two: LimitPlan,
  answer: FleetStates,
): void {
  const { due, base, reach, count, stride } = columns;
  const { state, left, governing, flags } = answer;
  const a = numbersOf(columns, today, one);
  const b = numbersOf(columns, today, two);
  const [aNow, bNow, aColumn, bColumn, aNowColumn, bNowColumn] = [a.now, b.now, a.column, b.column, a.nowColumn, b.nowColumn];
  const [aLead, bLead, aEdge, bEdge, aLate, bLate, aNode, bNode] = [a.lead, b.lead, a.edge, b.edge, a.late, b.late, one.node, two.node];
  const byDay = a.calendar && b.calendar;
  const out = task * stride;
  for (let m = 0; m < count; m += 1) {
    const aDue = due[aColumn + m] as number;
    const bDue = due[bColumn + m] as number;
    const aRest = aDue - (aNow[aNowColumn + m] as number);
    const bRest = bDue - (bNow[bNowColumn + m] as number);
    let aIs: number;
    if (aRest > aLead) aIs = CLEAR;
    else if (aRest > aEdge) aIs = COMING_UP;
    else if (aRest >= -aLate) aIs = DUE;
    else if (aRest < -aLate) aIs = OVERDUE;
    else aIs = base[aColumn + m] === -Infinity ? UNRECORDED : UNKNOWN;
    let bIs: number;
    if (bRest > bLead) bIs = CLEAR;
    else if (bRest > bEdge) bIs = COMING_UP;
    else if (bRest >= -bLate) bIs = DUE;
    else if (bRest < -bLate) bIs = OVERDUE;
    else bIs = base[bColumn + m] === -Infinity ? UNRECORDED : UNKNOWN;
    let second = bIs > aIs;
    if (aIs === bIs) {
      if (aIs >= DUE) {
        const aDay = a.calendar ? aDue + a.after : (reach[aColumn + m] as number);
        const bDay = b.calendar ? bDue + b.after : (reach[bColumn + m] as number);
        second = bDay < aDay;
      } else if (aIs <= COMING_UP) {
        if (byDay) second = bDue < aDue;
        else {
          const aSpan = aDue - (base[aColumn + m] as number);
          const bSpan = bDue - (base[bColumn + m] as number);
          // used = 1 − left / span, but worked out as the assessor does, so that ties are the same ties
          second = (bSpan > 0 ? (bSpan - bRest) / bSpan : 1) > (aSpan > 0 ? (aSpan - aRest) / aSpan : 1);
        }
      }
    }
    const is = second ? bIs : aIs;
    state[out + m] = is;
    left[out + m] = second ? bRest : aRest;
    governing[out + m] = second ? bNode : aNode;
    if (is >= UNRECORDED) flags[m] = (flags[m] as number) | WORK;
  }
}

/** Where a limit finds its numbers. */
function numbersOf(columns: MachineColumns, today: Float64Array, limit: LimitPlan): Numbers {
  const { rule, strict } = limit;
  const calendar = rule.is === 'calendar-interval';
  return {
    column: limit.slot * columns.stride,
    now: calendar ? today : columns.total,
    nowColumn: calendar ? 0 : rule.meter * columns.stride,
    lead: limit.lead,
    edge: strict ? -0.5 : 0,
    late: limit.late,
    hold: limit.holdAfter ?? Infinity,
    calendar,
    after: strict ? 1 : 0,
  };
}
