import { firstIndex } from '../base/first-index.js';
import type { Moment } from '../values/moment.js';
import { notBefore } from '../values/moment.js';
import type { MeterPoint, MeterTrack } from './timeline.js';

/** The last point of a track that is not later than a moment (docs/meaning.md §2); `null` if there is none. O(log n) and a day's readings. */
export function meterAt(track: MeterTrack, when: Moment): MeterPoint | null {
  const after = firstIndex(track.points.length, (at) => (track.points[at]?.when.day ?? Infinity) > when.day);
  for (let index = after - 1; index >= 0; index -= 1) {
    const point = track.points[index];
    if (point !== undefined && notBefore(when, point.when)) return point;
  }
  return null;
}
