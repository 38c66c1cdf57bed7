import type { Moment } from '../values/moment.js';
import { notBefore } from '../values/moment.js';
import type { MeterPoint, MeterTrack } from './timeline.js';

/** The last point of a track that is not later than a moment (docs/meaning.md §2); `null` if there is none. O(log n) and a day's readings. */
export function meterAt(track: MeterTrack, when: Moment): MeterPoint | null {
  let [low, high] = [0, track.points.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((track.points[middle]?.when.day ?? Infinity) <= when.day) low = middle + 1;
    else high = middle;
  }
  for (let index = low - 1; index >= 0; index -= 1) {
    const point = track.points[index];
    if (point !== undefined && notBefore(when, point.when)) return point;
  }
  return null;
}
