/** Marks that stand for a calendar month, quarter, half-year or year: on its last day, and met by work on any day of it. */
import type { CalendarMarksNode } from './rule-graph.js';

export type Period = 'month' | 'quarter' | 'half-year' | 'year';

/** Months and marks a year of each period. */
const PERIODS: readonly { readonly period: Period; readonly months: number; readonly marks: number }[] = [
  { period: 'month', months: 1, marks: 1 },
  { period: 'quarter', months: 3, marks: 4 },
  { period: 'half-year', months: 6, marks: 2 },
  { period: 'year', months: 12, marks: 1 },
];

/** The period that marks stand for; `null` for marks that are days and no more. */
export function periodOf({ days, early: { calendar } }: CalendarMarksNode): { readonly period: Period; readonly months: number } | null {
  if (calendar?.unit !== 'calendar-months' || days.some(({ day }) => day !== 31)) return null;
  return PERIODS.find(({ months, marks }) => months === calendar.count + 1 && marks === days.length) ?? null;
}
