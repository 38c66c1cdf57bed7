/**
 * Ranges of days and of numbers, as people say them.
 */
import type { DateRange } from '../../outlook/forecast.js';
import { monthName } from '../../values/calendar.js';
import { civilOf } from '../../values/civil.js';
import type { Day } from '../../values/moment.js';
import { numberText } from '../../values/number-text.js';
import { dayInWords } from '../dates-in-words.js';

/** Two days, saying month and year once where they are the same. @example daysInWords(a, b) // '12 to 30 June 2026' */
export function daysInWords(from: Day, to: Day): string {
  const [a, b] = [civilOf(from), civilOf(to)];
  if (from === to) return dayInWords(from);
  if (a.year !== b.year) return `${dayInWords(from)} to ${dayInWords(to)}`;
  return a.month === b.month ? `${a.day} to ${dayInWords(to)}` : `${a.day} ${monthName(a.month) ?? ''} to ${dayInWords(to)}`;
}

/** From when to when; what lies beyond the time looked at, up to `to`, is said to. */
export function rangeInWords({ early, late }: DateRange, to: Day): string {
  return late === null ? `${dayInWords(early)} at the earliest, perhaps after ${dayInWords(to)}` : daysInWords(early, late);
}

/** The most likely day, where it is not the whole range. */
export function likelyInWords({ early, likely, late }: DateRange, to: Day): string {
  if (likely === null) return `most likely after ${dayInWords(to)}`;
  return early === late ? '' : `most likely ${dayInWords(likely)}`;
}

/** `4.2 (3.3 to 5.3)`; without the interval where there is none. */
export function numberAndRange(value: number, range: { readonly low: number; readonly high: number | null } | null, places = 2): string {
  const text = (each: number): string => numberText(each, places);
  if (range === null) return text(value);
  return `${text(value)} (${range.high === null ? `${text(range.low)} or more` : `${text(range.low)} to ${text(range.high)}`})`;
}
