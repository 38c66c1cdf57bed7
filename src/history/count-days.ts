import { compareMoments, type Day, type Moment, onDay } from '../values/moment.js';
import { TICKS_PER_UNIT, unitsOf } from '../values/ticks.js';
import type { EntryId } from './entry.js';
import type { MeterPoint } from './timeline.js';

/** More days than any machine serves; a made-up history gets no further. */
const MOST_DAYS = 100_000;

/** An outing on which a meter ran, and until when; with what it rests on that it did. */
export interface Served {
  readonly entry: EntryId;
  readonly when: Moment;
  readonly end: Moment;
  readonly ticks: number;
  readonly alongside: readonly EntryId[];
}

/** The total of a meter that counts days of service: one more with each day on which an outing is under way, from the first of them on that day. */
export function countDays(outings: readonly Served[]): readonly MeterPoint[] {
  const points: MeterPoint[] = [];
  let last = -Infinity;
  for (const { entry, when, end, alongside } of [...outings].sort((a, b) => compareMoments(a.when, b.when))) {
    for (let day = Math.max(when.day, last + 1); day <= end.day && points.length < MOST_DAYS; day += 1) {
      const total = (points.length + 1) * TICKS_PER_UNIT;
      points.push({ entry, when: day === when.day ? when : onDay(day as Day), total, shown: unitsOf(total), alongside });
      last = day;
    }
  }
  return points;
}
