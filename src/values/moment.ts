/**
 * Civil time as the core counts it: whole days since 1970-01-01 and, where somebody noted it, the minute of the day.
 *
 * No zone, no clock, no library date type: an owner's logbook says "on 11 May at half past eight", and that is all it means.
 */
declare const dayBrand: unique symbol;

/** Days since 1970-01-01 in the proleptic Gregorian calendar; negative before it. */
export type Day = number & { readonly [dayBrand]: true };

/** A day, with the minute of that day (0 to 1439) where one was noted. */
export interface Moment {
  readonly day: Day;
  /** `null`: some time on that day, nobody noted when. */
  readonly minute: number | null;
}

/** Minutes in a day. */
export const MINUTES_PER_DAY = 1440;

/** A day with no time noted. */
export function onDay(day: Day): Moment {
  return { day, minute: null };
}

/**
 * Whether `b` is after `a` (docs/meaning.md §1): its day is later; or the days are equal, both have a minute and b's is later.
 *
 * Not a total order: on one day without minutes neither of two moments is after the other.
 */
export function isAfter(b: Moment, a: Moment): boolean {
  if (b.day !== a.day) return b.day > a.day;
  return b.minute !== null && a.minute !== null && b.minute > a.minute;
}

/** Whether `b` is not before `a`: on one day without minutes on both, each is "not before" the other. */
export function notBefore(b: Moment, a: Moment): boolean {
  return !isAfter(a, b);
}

/** Whether something that happened at `when` counts at `now`: it is not dated after it. */
export function countsAt(when: Moment, now: Moment): boolean {
  return notBefore(now, when);
}

/**
 * A total order for sorting: by day, then by minute, those of a day without a minute first.
 *
 * What comes first among moments that {@link isAfter} cannot tell apart is a convention, the same for every run.
 */
export function compareMoments(a: Moment, b: Moment): number {
  return a.day - b.day || (a.minute ?? -1) - (b.minute ?? -1);
}

/** Minutes from `a` to `b`, or `null` where one of the two was not noted to the minute. */
export function minutesBetween(a: Moment, b: Moment): number | null {
  if (a.minute === null || b.minute === null) return null;
  return (b.day - a.day) * MINUTES_PER_DAY + b.minute - a.minute;
}

/** So many minutes later, over midnight where need be. A moment without a minute stays as it is. */
export function addMinutes(moment: Moment, minutes: number): Moment {
  if (moment.minute === null) return moment;
  const total = moment.minute + minutes;
  const days = Math.floor(total / MINUTES_PER_DAY);
  return { day: (moment.day + days) as Day, minute: total - days * MINUTES_PER_DAY };
}

/** "HH:MM", 00:00 to 23:59, as the minute of the day; `null` for anything else. */
export function parseTime(text: string): number | null {
  const match = /^([01]\d|2[0-3]):([0-5]\d)$/.exec(text);
  return match === null ? null : Number(match[1]) * 60 + Number(match[2]);
}

/** The minute of a day as "HH:MM". */
export function formatTime(minute: number): string {
  return `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
}

/** The first minute since 1970-01-01 that a moment may be: where nobody noted the minute, the first of its day. */
export function firstMinute({ day, minute }: Moment): number {
  return day * MINUTES_PER_DAY + (minute ?? 0);
}

/** The last minute that a moment may be: where nobody noted the minute, the last of its day. */
export function lastMinute({ day, minute }: Moment): number {
  return day * MINUTES_PER_DAY + (minute ?? MINUTES_PER_DAY - 1);
}
