/**
 * Reading a simulated course of use: where the meter stands on a day, and on which day it gets somewhere.
 *
 * INVARIANT: a course counts a whole number of ticks each day, so that all of this is exact and agrees with an assessment of the same readings.
 */
import { addDays } from '../values/calendar.js';
import type { Day } from '../values/moment.js';
import { FAR } from './due-days.js';
import type { UseFutures } from './use-futures.js';

/** The life total of future `f` at the end of a day; its last where the day lies beyond. */
export function totalOn({ start, weeks, totals }: UseFutures, f: number, day: number): number {
  const into = Math.max(0, day - start);
  const week = Math.min(weeks - 1, (into / 7) | 0);
  const at = f * (weeks + 1) + week;
  if (into >= 7 * weeks) return totals[at + 1] ?? 0;
  const before = totals[at] ?? 0;
  return before + (((totals[at + 1] ?? 0) - before) / 7) * (into - 7 * week);
}

/** The day on which future `f` first stands at a life total or beyond; Infinity if it does not within its weeks. O(log weeks). */
export function dayReached(futures: UseFutures, f: number, total: number): number {
  const day = reachedBy(futures, f, total, futures.start, FAR);
  return day === FAR ? Infinity : day;
}

/**
 * As {@link dayReached}, but `until`, a whole day, where the total is not reached before that day.
 *
 * @param from a day not before the start; where the total had been reached by then, the answer is some day not after it.
 */
export function reachedBy({ start, weeks, totals }: UseFutures, f: number, total: number, from: number, until: number): number {
  const row = f * (weeks + 1);
  const week = Math.min(weeks, ((from - start) / 7) | 0);
  if (total <= (totals[row + week] ?? 0)) return Math.min(until, start + 7 * week);
  // The first week by whose end it is too late.
  const last = until >= start + 7 * weeks ? weeks : ((until - start + 6) / 7) | 0;
  if (last <= week || (totals[row + last] ?? 0) < total) return until;
  const high = weekReached(totals, row + week + 1, row + last, total);
  const before = totals[high - 1] ?? 0;
  // A small whole number, as all that is returned here: nothing to keep in memory.
  const into = Math.ceil((7 * (total - before)) / ((totals[high] ?? 0) - before)) | 0;
  const day = start + 7 * (high - 1 - row) + into;
  return day < until ? day : until;
}

/**
 * The first place from `first` to `last` that holds `total` or more; `last` does.
 *
 * Looks in steps that grow, and then halves: no more than the logarithm of the places between.
 */
function weekReached(totals: Float64Array, first: number, last: number, total: number): number {
  let high = first;
  // Single steps at first: a branch that is guessed wrong costs more than a few places looked at.
  const near = Math.min(last, first + SINGLE_STEPS);
  while (high < near && (totals[high] ?? 0) < total) high += 1;
  if (high < near || high === last) return high;
  let [low, step] = [high - 1, SINGLE_STEPS];
  while (high < last && (totals[high] ?? 0) < total) {
    low = high;
    high = Math.min(last, high + step);
    step *= 2;
  }
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((totals[middle] ?? 0) < total) low = middle;
    else high = middle;
  }
  return high;
}

const SINGLE_STEPS = 8;

/** The last day that the futures tell of. */
export function lastDayOf({ start, weeks }: UseFutures): Day {
  return addDays(start, weeks * 7);
}
