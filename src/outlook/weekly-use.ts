import type { MeterTrack } from '../history/timeline.js';
import { addDays } from '../values/calendar.js';
import type { Day } from '../values/moment.js';

/** What a meter counted in each of the weeks before its last reading. */
export interface WeeklyUse {
  /** The day of the last reading: the end of the last week. */
  readonly end: Day;
  /** The life total then. */
  readonly total: number;
  /** Ticks in each whole week, oldest first; spread evenly between readings. */
  readonly weeks: readonly number[];
  /** Days with a reading, or with an outing where it counts from those. */
  readonly readings: number;
  /** The middle of the days from one reading to the next. */
  readonly usualGap: number;
}

/** The last reading of each day. */
export interface DailyTotal {
  readonly day: Day;
  readonly total: number;
}

/** The totals of a track, one a day, in order. */
export function dailyTotals(track: MeterTrack): readonly DailyTotal[] {
  const days: DailyTotal[] = [];
  for (const { when, total } of track.points) {
    if (days.at(-1)?.day === when.day) days.pop();
    days.push({ day: when.day, total });
  }
  return days;
}

/**
 * The last day on which a meter that counts from outings is known to stand where it does: nobody reads it, and what is not on record is no outing. Today may still bring one;
 * `undefined` where the last outing was not before then.
 */
export function standsUntil(track: MeterTrack, now: Day): Day | undefined {
  const last = track.points.at(-1);
  const yesterday = addDays(now, -1);
  return last === undefined || last.when.day >= yesterday ? undefined : yesterday;
}

/** Totals, with where the meter stood up to a day after the last of them. */
export function stoodUntil(days: readonly DailyTotal[], until: Day | undefined): readonly DailyTotal[] {
  const last = days.at(-1);
  return until === undefined || last === undefined ? days : [...days, { day: until, total: last.total }];
}

/** The use of a meter by weeks; `until`: see {@link standsUntil}; `null` before there is a week between the first reading and the last. */
export function weeklyUse(track: MeterTrack, until?: Day): WeeklyUse | null {
  const noted = dailyTotals(track);
  const days = stoodUntil(noted, until);
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined || last.day - first.day < 7) return null;
  const count = Math.floor((last.day - first.day) / 7);
  const weeks: number[] = [];
  let at = days.length - 1;
  let after = last.total;
  for (let week = 1; week <= count; week += 1) {
    const day = last.day - 7 * week;
    while ((days[at]?.day ?? -Infinity) > day) at -= 1;
    const before = between(days[at] ?? first, days[at + 1] ?? last, day);
    weeks.push(after - before);
    after = before;
  }
  const gaps = noted.slice(1).map(({ day }, index) => day - (noted[index]?.day ?? day));
  gaps.sort((a, b) => a - b);
  return { end: last.day, total: last.total, weeks: weeks.reverse(), readings: noted.length, usualGap: gaps[gaps.length >> 1] ?? 7 };
}

function between(a: DailyTotal, b: DailyTotal, day: number): number {
  return b.day === a.day ? a.total : a.total + ((b.total - a.total) * (day - a.day)) / (b.day - a.day);
}
