import { weekdayOf } from '../values/calendar.js';
import { dayNumber, daysInMonth } from '../values/civil.js';
import type { Day } from '../values/moment.js';
import type { CalendarMarksNode, CalendarWindowNode } from './rule-graph.js';

/** The days of a month, by their numbers, that a rule marks by the week. */
export type DaysByWeek = (node: CalendarMarksNode, month: number, first: Day, length: number) => readonly number[];

/**
 * The marks of one month, in order, without repeats (docs/meaning.md §4, "On marks").
 *
 * @param month counted from year 0, January = 0
 * @param byWeek what tells the days of the week that are not in each week; nobody asks for it where there are none.
 * @example markedDays(every Monday, January 2026) // 2026-01-05, 12, 19, 26
 */
export function markedDays(node: CalendarMarksNode | CalendarWindowNode, month: number, byWeek?: DaysByWeek): readonly Day[] {
  const first = firstOf(month);
  if (node.kind === 'calendar-window') return isNamedMonth(month, node.month, node.months) ? [first] : [];
  const length = daysInMonth(Math.floor(month / 12), (month % 12) + 1);
  const named = node.days
    .filter((mark) => (mark.month === undefined ? month % node.months === 0 : isNamedMonth(month, mark.month, node.months)))
    .filter((mark) => !node.skip || mark.day <= length)
    .map((mark) => Math.min(mark.day, length));
  const days = [...named, ...(byWeek === undefined ? weekly(node.weekdays ?? [], first, length) : byWeek(node, month, first, length))];
  return [...new Set(days)].sort((a, b) => a - b).map((day) => (first + day - 1) as Day);
}

/** The days of a month that are one of some days of the week. */
export function weekly(weekdays: readonly number[], first: Day, length: number): readonly number[] {
  return weekdays.flatMap((weekday) => {
    const day = ((weekday - weekdayOf(first) + 7) % 7) + 1;
    return [day, day + 7, day + 14, day + 21, day + 28].filter((each) => each <= length);
  });
}

function firstOf(month: number): Day {
  return dayNumber({ year: Math.floor(month / 12), month: (month % 12) + 1, day: 1 });
}

/** Whether a month is the named one of a year that counts: of every so many years from year 0. */
export function isNamedMonth(month: number, named: number, months: number): boolean {
  const everyYears = Math.max(1, Math.round(months / 12));
  return month % 12 === named - 1 && Math.floor(month / 12) % everyYears === 0;
}

/** Whether there is one mark in each so many months, which lie at least 28 days apart. */
export function hasOneMark({ days, placed = [], weekdays }: CalendarMarksNode): boolean {
  return weekdays === undefined && days.length + placed.length === 1;
}

/** How many weeks pass from one of the weeks that count to the next; 0 for marks that go by the month. */
export function weeksOf(node: CalendarMarksNode | CalendarWindowNode): number {
  return node.kind === 'calendar-marks' ? (node.weeks?.count ?? 0) : 0;
}

/**
 * In how many months on from any there is a mark, or there is none at all. A day that some months lack (30 February, the leap day) recurs within eight
 * years or not; so many weeks pass within so many months.
 */
export function reachOf(node: CalendarMarksNode | CalendarWindowNode): number {
  return node.months + weeksOf(node) + 8 * 12;
}
