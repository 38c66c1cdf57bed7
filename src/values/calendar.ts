/**
 * Months and their names, and calendar spans added to a day.
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
 * The last day **through** which something done on `day` is good for so many calendar months: the last of the last month.
 *
 * @example addCalendarMonths(2007-06-06, 12) // 2008-06-30, so that it is due from 2008-07-01 (14 CFR 91.409(a))
 */
export function addCalendarMonths(day: Day, count: number): Day {
  const { year, month } = civilOf(day);
  const target = monthAfter(year, month, count);
  return dayNumber({ ...target, day: daysInMonth(target.year, target.month) });
}

/** The first day of the month that `day` lies in. */
export function firstOfMonth(day: Day): Day {
  const { year, month } = civilOf(day);
  return dayNumber({ year, month, day: 1 });
}

function monthAfter(year: number, month: number, count: number): { readonly year: number; readonly month: number } {
  const months = year * 12 + (month - 1) + count;
  const targetYear = Math.floor(months / 12);
  return { year: targetYear, month: months - targetYear * 12 + 1 };
}
