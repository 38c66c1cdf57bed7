import { firstIndex } from '../base/first-index.js';
import type { MeterPoint, MeterTrack } from '../history/timeline.js';

/** The first point at which the total has reached `ticks` (beyond it, if `strict`); undefined if it has not. */
export function firstPointReaching(track: MeterTrack | undefined, ticks: number, strict: boolean): MeterPoint | undefined {
  if (track === undefined) return undefined;
  const { points } = track;
  return points[
    firstIndex(points.length, (at) => {
      const total = points[at]?.total ?? Infinity;
      return strict ? total > ticks : total >= ticks;
    })
  ];
}
