import type { TaskState, Verdict } from '../../engine.js';

/** One line of what `duewright fleet --json` answers: a machine with every task of the schedule, in its order. */
export interface FleetLine {
  readonly machine: string;
  readonly verdict: Verdict;
  readonly tasks: readonly {
    readonly task: string;
    readonly state: TaskState;
    /** Left of the governing limit: days where it goes by the calendar, else ticks (1/36000 of the meter's unit). */
    readonly left: number | null;
    /** Index of the limit in the nodes of the rule graph; `null` where no limit decides. */
    readonly governing: number | null;
  }[];
}
