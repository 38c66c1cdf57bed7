/**
 * How fast an hour meter can have risen, against every earlier reading at once.
 */
import type { Moment } from '../values/moment.js';
import { MINUTES_PER_DAY } from '../values/moment.js';
import type { MeterPoint } from './timeline.js';

/** The least of something over many readings, and which of them had it. */
interface Least {
  readonly value: number;
  readonly point: MeterPoint;
}

/**
 * Two running minima that stand for all readings taken in so far.
 *
 * From any earlier reading i to a later one j the total may rise by 24 h for each day from the first to the last, both
 * included, or where both have minutes by the minutes between. total_j − total_i ≤ rate × (time_j − time_i) for every i is
 * total_j − rate × time_j ≤ min over i of (total_i − rate × time_i), so one number per rule is enough.
 */
export interface RiseBound {
  readonly byDay: Least | null;
  readonly byMinute: Least | null;
}

/** The bound before any reading. */
export const NO_BOUND: RiseBound = { byDay: null, byMinute: null };

/** The bound with one more reading in it. `ticksPerDay`: ticks of the meter's unit in 24 h. */
export function withReading(bound: RiseBound, point: MeterPoint, ticksPerDay: number): RiseBound {
  const { total, when } = point;
  const daily = { value: total - ticksPerDay * when.day, point };
  const timed = timedValue(total, when, ticksPerDay);
  return {
    byDay: least(bound.byDay, daily),
    byMinute: timed === null ? bound.byMinute : least(bound.byMinute, { value: timed, point }),
  };
}

/** The earlier reading from which `total` at `when` would have risen faster than time passed; `null` if there is none. */
export function risesTooFast(bound: RiseBound, total: number, when: Moment, ticksPerDay: number): MeterPoint | null {
  const timed = timedValue(total, when, ticksPerDay);
  if (timed !== null && bound.byMinute !== null && timed > bound.byMinute.value) return bound.byMinute.point;
  if (bound.byDay !== null && total - ticksPerDay * when.day > bound.byDay.value + ticksPerDay) return bound.byDay.point;
  return null;
}

function timedValue(total: number, when: Moment, ticksPerDay: number): number | null {
  return when.minute === null ? null : total - (ticksPerDay / MINUTES_PER_DAY) * (when.day * MINUTES_PER_DAY + when.minute);
}

function least(a: Least | null, b: Least): Least {
  return a === null || b.value < a.value ? b : a;
}
