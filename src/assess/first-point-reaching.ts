import { firstIndex } from '../base/first-index.js';
import type { MeterPoint, MeterTrack } from '../history/timeline.js';
import { addMinutes, minutesBetween, type Moment } from '../values/moment.js';

/**
 * The first point at which the total has reached `ticks` (beyond it, if `strict`), at the moment at which it did: that of the reading, or, of an outing that
 * is counted, the minute by which so much of it had passed. Undefined if it has not.
 */
export function firstPointReaching(track: MeterTrack | undefined, ticks: number, strict: boolean): MeterPoint | undefined {
  const points = track?.points ?? [];
  const least = strict ? Math.floor(ticks) + 1 : Math.ceil(ticks);
  const point = points[firstIndex(points.length, (at) => (points[at]?.total ?? Infinity) >= least)];
  return point?.passed === undefined ? point : { ...point, when: minuteReaching(point, point.passed, least) };
}

function minuteReaching({ when, total }: MeterPoint, { since, ticks }: NonNullable<MeterPoint['passed']>, least: number): Moment {
  const length = minutesBetween(since, when);
  if (length === null || ticks === 0) return when;
  const wanted = Math.ceil(((least - (total - ticks)) * length) / ticks);
  return addMinutes(since, Math.max(0, wanted));
}
