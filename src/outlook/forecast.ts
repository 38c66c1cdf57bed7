import type { Day } from '../values/moment.js';
import { dayReached } from './course-days.js';
import type { UseFutures } from './use-futures.js';

/** About when something falls due. */
export interface DateRange {
  readonly early: Day;
  /** As likely before as after; `null` where it is beyond what was looked at. */
  readonly likely: Day | null;
  /** `null` where more than the rest may lie beyond what was looked at. */
  readonly late: Day | null;
  /** The share of cases that fall from `early` to `late`. */
  readonly level: number;
}

/** A range of days with what stands behind it. */
export interface Forecast extends DateRange {
  readonly n: number;
  readonly of: string;
  readonly method: string;
}

/** The share of cases that a range is to hold. */
export const LEVEL = 0.8;

/**
 * When a meter reaches a life total, as a range of days; `null` where it is out of sight even at the earliest.
 *
 * @param now days before it are given as this day: the total may have been reached since the last reading.
 */
export function forecastTotal(futures: UseFutures, total: number, now: Day): Forecast | null {
  const days = new Float64Array(futures.count);
  for (let f = 0; f < futures.count; f += 1) days[f] = Math.max(now, dayReached(futures, f, total));
  const range = rangeOfDays(days);
  return range === null
    ? null
    : { ...range, n: futures.readings, of: futures.fromOutings ? 'days with an outing' : 'days with a reading', method: futures.method };
}

/** The middle 80 % of days, Infinity meaning beyond what was looked at; sorts `days`. `null` where nearly all lie beyond. */
export function rangeOfDays(days: Float64Array): DateRange | null {
  days.sort();
  const early = dayAt(days, (1 - LEVEL) / 2);
  if (early === null) return null;
  return { early, likely: dayAt(days, 0.5), late: dayAt(days, (1 + LEVEL) / 2), level: LEVEL };
}

/** Which of so many cases, in order and counted from 0, has that share of them before it. */
export function rankOf(share: number, cases: number): number {
  return Math.min(cases - 1, Math.floor(share * cases));
}

function dayAt(sorted: Float64Array, share: number): Day | null {
  const day = sorted[rankOf(share, sorted.length)];
  return day === undefined || !Number.isFinite(day) ? null : (day as Day);
}
