/**
 * A rule graph laid out for many machines at once: for each task the limits that can be worked out from a last doing and a
 * reading, and by name what cannot.
 */
import type { CalendarAmount, NodeId, RuleGraph } from '../graph/rule-graph.js';

/** A meter that people read; `meters[index]` of the plan. */
export interface PlanMeter {
  readonly id: string;
  /** Ticks in 24 h on an hour meter; `null` on one that does not count time. */
  readonly ticksPerDay: number | null;
}

/** How a limit finds its due point from what is known of a machine. */
export type LimitRule =
  | { readonly is: 'meter-interval'; readonly meter: number; readonly ticks: number }
  | { readonly is: 'calendar-interval'; readonly amount: CalendarAmount }
  /** Every multiple of so many ticks. */
  | { readonly is: 'marks'; readonly meter: number; readonly ticks: number; readonly early: number }
  /** At these totals, counted from the machine's start. */
  | { readonly is: 'stages'; readonly meter: number; readonly points: readonly number[]; readonly early: number };

/** One limit. Its columns are `due[slot]`, `span[slot]` and `reach[slot]`. */
export interface LimitPlan {
  readonly kind: 'limit';
  readonly register: number;
  readonly slot: number;
  readonly node: NodeId;
  readonly rule: LimitRule;
  /** Whether the start of the machine may be its base. */
  readonly fromStart: boolean;
  readonly strict: boolean;
  /** Ticks or days after the due point from which it is overdue, before it from which it is coming up, after it from which it holds. */
  readonly late: number;
  readonly lead: number;
  /** `null`: no hard stop. */
  readonly holdAfter: number | null;
}

/** Whichever first, or last. */
export interface GroupPlan {
  readonly kind: 'group';
  readonly register: number;
  readonly node: NodeId;
  readonly mode: 'first' | 'last';
  readonly parts: readonly TriggerPlan[];
}

/** `first` until its stages are met, which is settled when a machine is taken in: the column `met[slot]` says so. */
export interface FirstPlan {
  readonly kind: 'first';
  readonly register: number;
  readonly slot: number;
  readonly node: NodeId;
  readonly first: TriggerPlan;
  readonly then: TriggerPlan | null;
}

/** Each plan has a `register` of its own: the place in scratch columns where one machine's result stands while a tree is judged. */
export type TriggerPlan = LimitPlan | GroupPlan | FirstPlan;

/** How one task is judged: `columns`, or by the ordinary assessor because of what `outside` names. */
export interface TaskPlan {
  readonly id: string;
  /** Index in the schedule's tasks, and so of its columns. */
  readonly index: number;
  readonly serial: { readonly from: number; readonly to: number } | null;
  /** `null`: nothing asks for it. */
  readonly trigger: TriggerPlan | null;
  /** Tasks whose doing sets its clock, itself among them, in the order of their ids. */
  readonly sources: readonly number[];
  /** What keeps it out of the columns, as the schedule's own text; `null` if nothing does. */
  readonly outside: string | null;
}

/** Which rules of a schedule are worked out in columns, and how they are laid out. */
export interface ColumnPlan {
  readonly graph: RuleGraph;
  readonly meters: readonly PlanMeter[];
  readonly tasks: readonly TaskPlan[];
  /** All limits, by slot. */
  readonly limits: readonly LimitPlan[];
  /** All `first` nodes, by slot. */
  readonly firsts: readonly FirstPlan[];
  /** How many registers there are. */
  readonly registers: number;
  /** Index in `tasks` of those that the ordinary assessor judges. */
  readonly outside: readonly number[];
  /** Whether anything but the tasks in columns has a say in a machine's verdict. */
  readonly verdictOutside: boolean;
}
