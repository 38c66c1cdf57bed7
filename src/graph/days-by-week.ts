import { weekdayOf } from '../values/calendar.js';
import type { Day } from '../values/moment.js';
import { isNamedMonth, markedDays, weekly } from './marked-days.js';
import type { CalendarMarksNode, CalendarWindowNode } from './rule-graph.js';

/** From a day of the week to the same day of the next. */
const WEEK = 7;

/**
 * The days of a month, by their numbers, that a rule marks by the week (docs/meaning.md §4, "On marks"): its days of the week, in every so many weeks
 * where it says so, and the n-th or last of them in the month.
 *
 * @param month counted from year 0, January = 0
 * @param first the first day of that month, which has so many days
 * @example daysByWeek(month on the last Friday, …, 2026-05-01, 31) // [29]
 */
export function daysByWeek(node: CalendarMarksNode, month: number, first: Day, length: number): readonly number[] {
  const { weekdays = [], weeks, placed = [], months } = node;
  const days = weekly(weekdays, first, length);
  const placedDays = placed
    .filter((mark) => (mark.month === undefined ? month % months === 0 : isNamedMonth(month, mark.month, months)))
    .map(({ weekday, day = length - WEEK + 1 }) => onOrAfter(weekday, day, first))
    .filter((day) => day <= length);
  return [...(weeks === undefined ? days : days.filter((day) => isInBeat(first + day - 1, weeks))), ...placedDays];
}

/** Whether the week of a day, Monday to Sunday, is one of every so many from that of the first day on, and it is not before that day. */
function isInBeat(day: number, { count, from }: NonNullable<CalendarMarksNode['weeks']>): boolean {
  return day >= from && ((mondayOf(day) - mondayOf(from)) / WEEK) % count === 0;
}

function mondayOf(day: number): number {
  return day - weekdayOf(day as Day) + 1;
}

/** The first of a day of the week on or after a day of the month; the last of all is that of the last seven days. */
function onOrAfter(weekday: number, day: number, first: Day): number {
  return day + ((weekday - weekdayOf((first + day - 1) as Day) + WEEK) % WEEK);
}

/** All marks of one month, also those that go by the week. */
export function everyMarkedDay(node: CalendarMarksNode | CalendarWindowNode, month: number): readonly Day[] {
  return markedDays(node, month, daysByWeek);
}
