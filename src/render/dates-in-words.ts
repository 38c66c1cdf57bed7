/**
 * Days and moments as people say them, in one form everywhere: 2 March 2026, at 08:30.
 */
import { monthName } from '../values/calendar.js';
import { civilOf } from '../values/civil.js';
import type { Day, Moment } from '../values/moment.js';

/** @example dayInWords(20514) // '2 March 2026' */
export function dayInWords(day: Day): string {
  const { year, month, day: dayOfMonth } = civilOf(day);
  return `${dayOfMonth} ${monthName(month) ?? ''} ${year}`;
}

/** The day, with the time where one was noted. */
export function momentInWords({ day, minute }: Moment): string {
  return minute === null ? dayInWords(day) : `${dayInWords(day)} at ${clockTime(minute)}`;
}

/** A minute of the day as HH:MM. */
export function clockTime(minute: number): string {
  return `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
}

/** A day of the year without its year: 1 November. */
export function monthDayInWords(monthDay: { readonly month?: number; readonly day: number }): string {
  return monthDay.month === undefined ? `day ${monthDay.day}` : `${monthDay.day} ${monthName(monthDay.month) ?? ''}`;
}
