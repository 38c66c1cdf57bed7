/**
 * Months and days of the week with their names, and calendar spans added to a day.
 */
import { civilOf, dayNumber, daysInMonth } from './civil.js';
import type { Day } from './moment.js';

/** The months of the year as the language spells them, January first. */
export const MONTH_NAMES = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** The days of the week as the language spells them, Monday first. */
export const WEEKDAY_NAMES = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'] as const;

/** `Monday` → 1 … `Sunday` → 7; `null` for any other word. */
export function weekdayNumber(name: string): number | null {
  const index = (WEEKDAY_NAMES as readonly string[]).indexOf(name);
  return index < 0 ? null : index + 1;
}

/** 1 → `Monday`; `null` outside 1 to 7. */
export function weekdayName(weekday: number): string | null {
  return WEEKDAY_NAMES[weekday - 1] ?? null;
}

/** `January` → 1 … `December` → 12; `null` for any other word. */
export function monthNumber(name: string): number | null {
  const index = (MONTH_NAMES as readonly string[]).indexOf(name);
  return index < 0 ? null : index + 1;
}

/** 1 → `January`; `null` outside 1 to 12. */
export function monthName(month: number): string | null {
  return MONTH_NAMES[month - 1] ?? null;
}

/** So many days later; earlier where `count` is negative. */
export function addDays(day: Day, count: number): Day {
  return (day + count) as Day;
}

/**
 * So many months later, on the same day of the month or, where that month lacks it, on its last.
 *
 * The k-th repeat of an interval is `addMonths(base, k * interval)`, never a repeated addition: a base on the 31st comes
 * back to the 31st. As TC39 `Temporal.PlainDate.add` with overflow "constrain". A year is 12 months.
 *
 * @example addMonths(2025-01-31, 1) // 2025-02-28
 */
export function addMonths(day: Day, count: number): Day {
  const { year, month, day: dayOfMonth } = civilOf(day);
  const target = monthAfter(year, month, count);
  return dayNumber({ ...target, day: Math.min(dayOfMonth, daysInMonth(target.year, target.month)) });
}

/**
 * The last day **through** which something done on `day` is good for so many calendar months: the last of the last month, or of the
 * period of so many months (a quarter, half a year, a year, each from January) that it lies in.
 *
 * @example addCalendarMonths(2007-06-06, 12) // 2008-06-30, so that it is due from 2008-07-01 (14 CFR 91.409(a))
 * @example addCalendarMonths(2023-05-10, 36, 12) // 2026-12-31: once every 3 calendar years (49 CFR 192.740(b))
 */
export function addCalendarMonths(day: Day, count: number, period = 1): Day {
  const { year, month } = civilOf(day);
  const target = monthAfter(year, month, count + restOfPeriod(month - 1 + count, period));
  return dayNumber({ ...target, day: daysInMonth(target.year, target.month) });
}

/** The first day of the month that `day` lies in, or of the period of so many months. */
export function firstOfMonth(day: Day, period = 1): Day {
  const { year, month } = civilOf(day);
  return dayNumber({ year, month: month - ((month - 1) % period), day: 1 });
}

/** How many months of its period follow on a month. Periods divide a year, so the years before it do not matter. */
function restOfPeriod(months: number, period: number): number {
  return period - 1 - (((months % period) + period) % period);
}

/** The day of the week, Monday is 1 and Sunday 7 (ISO 8601). */
export function weekdayOf(day: Day): number {
  return ((((day + 3) % 7) + 7) % 7) + 1;
}

function monthAfter(year: number, month: number, count: number): { readonly year: number; readonly month: number } {
  const months = year * 12 + (month - 1) + count;
  const targetYear = Math.floor(months / 12);
  return { year: targetYear, month: months - targetYear * 12 + 1 };
}
