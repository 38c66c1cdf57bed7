/**
 * Civil dates as whole days since 1970-01-01, by integer arithmetic alone.
 *
 * The algorithms are "days from civil" and its inverse: a year is taken to begin in March, so that the leap day is the last
 * of its year and 400 years are always 146,097 days (H. Hinnant, "chrono-Compatible Low-Level Date Algorithms").
 */
import type { Day } from './moment.js';

/** A date of the proleptic Gregorian calendar; `month` and `day` count from 1. */
export interface Civil {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** What became of a piece of text that should be a date. */
export type ParsedDate =
  | { readonly kind: 'date'; readonly day: Day }
  /** Not of the form YYYY-MM-DD, or the year is 0000. */
  | { readonly kind: 'not-a-date' }
  /** Of the right form, but no such month, or the month has fewer days. */
  | { readonly kind: 'no-such-day'; readonly lastDay: number | null };

const DAYS_IN_ERA = 146_097;
const DAYS_TO_1970 = 719_468;
const MONTH_LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** True for the years that have 29 February. */
export function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/** The length of a month, 28 to 31; `month` from 1 to 12, and 0 for any other. */
export function daysInMonth(year: number, month: number): number {
  return month === 2 && isLeapYear(year) ? 29 : (MONTH_LENGTHS[month - 1] ?? 0);
}

/**
 * The number of a day.
 *
 * @example dayNumber({ year: 1970, month: 1, day: 2 }) // 1
 */
export function dayNumber({ year, month, day }: Civil): Day {
  const marchYear = month <= 2 ? year - 1 : year;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  const dayOfYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return (era * DAYS_IN_ERA + dayOfEra - DAYS_TO_1970) as Day;
}

/** The date of a day number: the inverse of {@link dayNumber}. */
export function civilOf(day: Day): Civil {
  const shifted = day + DAYS_TO_1970;
  const era = Math.floor(shifted / DAYS_IN_ERA);
  const dayOfEra = shifted - era * DAYS_IN_ERA;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    day: dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1,
  };
}

/**
 * Reads an ISO 8601 date, years 0001 to 9999.
 *
 * @example parseDate('2025-02-29') // { kind: 'no-such-day', lastDay: 28 }
 */
export function parseDate(text: string): ParsedDate {
  const civil = fieldsOf(text);
  if (civil === null || civil.year === 0) return { kind: 'not-a-date' };
  const day = dayOf(text);
  if (day !== null) return { kind: 'date', day };
  return { kind: 'no-such-day', lastDay: daysInMonth(civil.year, civil.month) || null };
}

/** The day that an ISO date names, or `null` where {@link parseDate} would say why there is none. */
export function dayOf(text: string): Day | null {
  const civil = fieldsOf(text);
  if (civil === null || civil.year < 1 || civil.day < 1) return null;
  return civil.day <= daysInMonth(civil.year, civil.month) ? dayNumber(civil) : null;
}

/** The numbers of a text of the form YYYY-MM-DD, whether there is such a day or not. */
function fieldsOf(text: string): Civil | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  return match === null ? null : { year: Number(match[1]), month: Number(match[2]), day: Number(match[3]) };
}

/** A day as YYYY-MM-DD; outside the years 0001 to 9999 with a sign and six digits, as ISO 8601 has it. */
export function formatDate(day: Day): string {
  const { year, month, day: dayOfMonth } = civilOf(day);
  const digits =
    year >= 1 && year <= 9999 ? String(year).padStart(4, '0') : `${year < 0 ? '-' : '+'}${String(Math.abs(year)).padStart(6, '0')}`;
  return `${digits}-${String(month).padStart(2, '0')}-${String(dayOfMonth).padStart(2, '0')}`;
}
