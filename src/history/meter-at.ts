import { firstIndex } from '../base/first-index.js';
import type { Moment } from '../values/moment.js';
import { notBefore } from '../values/moment.js';
import type { OutingFacts } from './facts.js';
import type { MeterPoint, MeterTrack } from './timeline.js';

/**
 * Where a track stood at a moment (docs/meaning.md §2): its last point that is not later; on a meter that counts from outings, with the part of the outing
 * that ended next that had passed by then, if `cut` is given. `null` if there is nothing yet. O(log n) and a day's readings.
 */
export function meterAt({ points }: MeterTrack, when: Moment, cut?: OutingFacts['cut']): MeterPoint | null {
  let next = firstIndex(points.length, (at) => (points[at]?.when.day ?? Infinity) > when.day);
  let last = points[next - 1];
  while (last !== undefined && !notBefore(when, last.when)) last = points[(next -= 1) - 1];
  return cut?.(points[next], when) ?? last ?? null;
}
