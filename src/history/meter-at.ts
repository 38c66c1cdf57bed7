import { firstIndex } from '../base/first-index.js';
import { minutesBetween, type Moment, notBefore } from '../values/moment.js';
import { unitsOf } from '../values/ticks.js';
import type { MeterPoint, MeterTrack } from './timeline.js';

/**
 * Where a track stood at a moment (docs/meaning.md §2): its last point that is not later; on a meter that counts from outings, with the part of the outing
 * that ended next that had passed by then. `null` if there is nothing yet. O(log n) and a day's readings.
 */
export function meterAt({ points }: MeterTrack, when: Moment): MeterPoint | null {
  let next = firstIndex(points.length, (at) => (points[at]?.when.day ?? Infinity) > when.day);
  while (next > 0) {
    const point = points[next - 1];
    if (point !== undefined && notBefore(when, point.when)) return inTheMiddle(points[next], when) ?? point;
    next -= 1;
  }
  return inTheMiddle(points[0], when);
}

/** The point at which a moment cuts an outing; `null` where it does not, or minutes do not tell. */
function inTheMiddle(point: MeterPoint | undefined, when: Moment): MeterPoint | null {
  if (point?.passed === undefined) return null;
  const { since, ticks } = point.passed;
  const [length, left] = [minutesBetween(since, point.when), minutesBetween(when, point.when)];
  if (length === null || left === null || left >= length) return null;
  const total = point.total - Math.round((ticks * left) / length);
  return { ...point, when, total, shown: unitsOf(total) };
}
