import type { Day } from '../values/moment.js';
import type { CoursePoint } from './outlook.js';
import { lastDayOf, totalOn } from './course-days.js';
import type { UseFutures } from './use-futures.js';

/** Days from one point to the next: close enough for a smooth line. */
const STEP = 14;

/** The fan of a meter's futures: where it may stand, every two weeks from its last reading to a day. */
export function useCourse(futures: UseFutures, to: Day): readonly CoursePoint[] {
  const end = Math.min(to, lastDayOf(futures));
  const days: number[] = [];
  for (let day: number = futures.start; day < end; day += STEP) days.push(day);
  return [...days, end].map((day) => pointOn(futures, day as Day));
}

function pointOn(futures: UseFutures, day: Day): CoursePoint {
  const totals = new Float64Array(futures.count);
  for (let f = 0; f < futures.count; f += 1) totals[f] = totalOn(futures, f, day);
  totals.sort();
  const at = (share: number): number => Math.round(totals[Math.min(totals.length - 1, Math.floor(share * totals.length))] ?? 0);
  return { day, low: at(0.1), middle: at(0.5), high: at(0.9) };
}
