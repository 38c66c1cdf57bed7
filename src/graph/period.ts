/** Marks that stand for a calendar week, month, quarter, half-year or year: on its last day, and met by work on any day of it. */
import type { CalendarMarksNode } from './rule-graph.js';

export type Period = 'week' | 'month' | 'quarter' | 'half-year' | 'year';

/** Months and marks a year of each period of months. */
const PERIODS: readonly { readonly period: Period; readonly months: number; readonly marks: number }[] = [
  { period: 'month', months: 1, marks: 1 },
  { period: 'quarter', months: 3, marks: 4 },
  { period: 'half-year', months: 6, marks: 2 },
  { period: 'year', months: 12, marks: 1 },
];

/** The period that marks stand for, and the fewest days it has; `null` for marks that are days and no more. */
export function periodOf({ days, weekdays, early }: CalendarMarksNode): { readonly period: Period; readonly days: number } | null {
  const { calendar, size } = early;
  if (weekdays?.length === 1 && weekdays[0] === 7 && size === 6 && calendar === undefined) return { period: 'week', days: 7 };
  if (calendar?.unit !== 'calendar-months' || weekdays !== undefined || days.some(({ day }) => day !== 31)) return null;
  const found = PERIODS.find(({ months, marks }) => months === calendar.count + 1 && marks === days.length);
  return found === undefined ? null : { period: found.period, days: found.months * 28 };
}
