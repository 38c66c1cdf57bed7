import type { MeterPoint, MeterTrack } from '../history/timeline.js';

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
