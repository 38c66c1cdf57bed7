/**
 * The outlook of one machine: what its use, its fluids, its defects and its schedule let one expect, each number with what stands behind it.
 *
 * Plain data throughout, like an assessment.
 */
import type { Moment, Day } from '../values/moment.js';
import type { DateRange } from './forecast.js';
import type { Estimate } from './estimate.js';
import type { RateOfUse } from './rate-of-use.js';
import type { RepairTrend } from './repair-trend.js';
import type { VisitsAhead } from './visits-ahead.js';
import type { TaskAhead } from './year-ahead.js';

/** Where a meter may stand on a day ahead: of 10 simulated courses of use 1 stands below `low`, 5 below `middle`, 9 below `high`. */
export interface CoursePoint {
  readonly day: Day;
  /** Life totals in ticks. */
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** The use of one meter. */
export interface MeterAhead {
  readonly meter: string;
  /** Nobody reads it: it counts from outings. */
  readonly fromOutings?: true;
  /** Ticks a day; `null` where the readings, or the outings, do not tell. */
  readonly rate: RateOfUse | null;
  /** From the last reading on, or from now where it counts from outings; empty where the use is not known. */
  readonly course: readonly CoursePoint[];
}

/** Hours that a level lasts: an interval that may be open upwards. */
export interface HoursLeft {
  readonly value: number;
  /** `high` is `null` where it may be that nothing is lost; the whole is `null` where there are too few data for an interval. */
  readonly range: { readonly low: number; readonly high: number | null; readonly level: number } | null;
}

/** What goes of one fluid. */
export interface Loss {
  readonly litresPerHour: Estimate;
  /** Litres above the low mark at the last level. */
  readonly litresLeft: number;
  /** Hours of the meter from the last level to the low mark. */
  readonly hoursToLow: HoursLeft;
  /** About when it stands at the low mark if nobody tops up; `null` where that cannot be told, or is out of sight. */
  readonly low: DateRange | null;
  readonly levels: number;
  readonly topUps: number;
}

/** The fluid that a dipstick measures. */
export interface FluidAhead {
  readonly dipstick: string;
  /** The meter by whose hours the loss is reckoned; `null` where the schedule has no hour meter. */
  readonly meter: string | null;
  /** `null` with too few levels and hours, or where nothing was lost. */
  readonly loss: Loss | null;
}

/** A defect that was found at least once. */
export interface DefectAhead {
  readonly defect: string;
  readonly found: number;
  readonly open: boolean;
  /** By the hours of this meter. */
  readonly meter: string | null;
  readonly trend: RepairTrend;
}

/** The answer of `lookAhead`. */
export interface Outlook {
  readonly format: 'duewright-outlook';
  readonly version: 1;
  /** Of the rule graph that was run. */
  readonly schedule: { readonly name: string; readonly fingerprint: string };
  readonly now: Moment;
  /** The time looked at. */
  readonly from: Day;
  readonly to: Day;
  /** In the order of the schedule. */
  readonly tasks: readonly TaskAhead[];
  readonly meters: readonly MeterAhead[];
  readonly fluids: readonly FluidAhead[];
  readonly defects: readonly DefectAhead[];
  /** The next doing of every task that has a date, in visits; tasks of each day's work are left out. */
  readonly visits: VisitsAhead;
}
