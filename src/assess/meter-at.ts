import type { MeterPoint, MeterTrack } from '../history/timeline.js';
import { isAfter } from '../values/moment.js';
import type { Moment } from '../values/moment.js';

/** The last point of a track that is not later than a moment (docs/meaning.md §2); undefined if there is none. */
export function lastPointAt(track: MeterTrack | undefined, when: Moment): MeterPoint | undefined {
  if (track === undefined) return undefined;
  let low = 0;
  let high = track.points.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const point = track.points[middle];
    if (point !== undefined && point.when.day <= when.day) low = middle + 1;
    else high = middle;
  }
  for (let i = low - 1; i >= 0; i -= 1) {
    const point = track.points[i];
    if (point !== undefined && !isAfter(point.when, when)) return point;
  }
  return undefined;
}

/** The first point at which the total has reached `ticks` (beyond it, if `strict`); undefined if it has not. */
export function firstPointReaching(track: MeterTrack | undefined, ticks: number, strict: boolean): MeterPoint | undefined {
  if (track === undefined) return undefined;
  let low = 0;
  let high = track.points.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const total = track.points[middle]?.total ?? Infinity;
    if (strict ? total > ticks : total >= ticks) high = middle;
    else low = middle + 1;
  }
  return track.points[low];
}
