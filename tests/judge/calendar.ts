/**
 * Civil time for the judge: days since 1970-01-01, with Temporal as the calendar.
 *
 * Written apart from src/values, from docs/meaning.md §1 alone.
 */
import { Temporal } from 'temporal-polyfill';
import { remembered } from './remembered.js';

/** A day and, where somebody noted it, the minute. */
export interface When {
  readonly day: number;
  readonly minute: number | null;
}

/** A calendar span as a rule graph writes it. */
export interface CalendarSpan {
  readonly unit: 'minutes' | 'days' | 'months' | 'calendar-months';
  readonly count: number;
  /** Of calendar months: the months of the quarter, half-year or year to whose end they run. */
  readonly period?: number;
  /** Days by which it falls short. */
  readonly less?: number;
  /** Days that each span has besides. */
  readonly plus?: number;
}

/** A margin as a rule graph writes it. */
export interface DayMargin {
  readonly size: number;
  readonly calendar?: CalendarSpan;
}

const EPOCH = Temporal.PlainDate.from('1970-01-01');

/** The calendar is the same for ever: what was worked out once is kept. */
const numbers = remembered((_: typeof EPOCH, text: string) => numberOf(Temporal.PlainDate.from(text)));
const dates = remembered((epoch: typeof EPOCH, day: number) => epoch.add({ days: day }));
const months = remembered((_: typeof EPOCH, month: number) => {
  const first = Temporal.PlainDate.from({ year: Math.floor(month / 12), month: (month % 12) + 1, day: 1 });
  return { number: numberOf(first), days: first.daysInMonth };
});

function dateOf(day: number): Temporal.PlainDate {
  return dates(EPOCH, day);
}

function numberOf(date: Temporal.PlainDate): number {
  return EPOCH.until(date, { largestUnit: 'days' }).days;
}

/** `2026-05-11` as a day. */
export function dayFrom(text: string): number {
  return numbers(EPOCH, text);
}

/** Year, month and day of the month. */
export function ymd(day: number): { readonly year: number; readonly month: number; readonly day: number } {
  const { year, month, day: dayOfMonth } = dateOf(day);
  return { year, month, day: dayOfMonth };
}

/** A day of a month; one that the month lacks is its last, or `null` where it is to be left out. */
export function dayInMonth(year: number, month: number, day: number, skip: boolean): number | null {
  const first = months(EPOCH, year * 12 + month - 1);
  if (day > first.days && skip) return null;
  return first.number + Math.min(day, first.days) - 1;
}

/** A date as a day: from the first of its month, which is kept. */
function dayOf({ year, month, day }: Temporal.PlainDate): number {
  return months(EPOCH, year * 12 + month - 1).number + day - 1;
}

/** k spans after a day, counted from that day: never by adding one span to the outcome of the last. */
export function addSpan(day: number, span: CalendarSpan, k = 1): number {
  const beyond = k * (span.plus ?? 0) - (span.less ?? 0);
  switch (span.unit) {
    case 'minutes':
      return day + Math.floor((k * span.count) / 1440);
    case 'days':
      return day + k * span.count;
    case 'months':
      return dayOf(dateOf(day).add({ months: k * span.count }, { overflow: 'constrain' })) + beyond;
    case 'calendar-months': {
      const { end } = periodAt(
        dateOf(day)
          .with({ day: 1 })
          .add({ months: k * span.count }),
        span.period,
      );
      return dayOf(end) + beyond;
    }
  }
}

/** The first and last day of the quarter, half-year or year in which a date lies; of the month where no period is named. */
function periodAt(date: Temporal.PlainDate, months = 1): { readonly start: Temporal.PlainDate; readonly end: Temporal.PlainDate } {
  const number = Math.ceil(date.month / months);
  const start = date.with({ month: (number - 1) * months + 1, day: 1 });
  return { start, end: start.add({ months }).subtract({ days: 1 }) };
}

/** 1 for Monday to 7 for Sunday. */
export function weekday(day: number): number {
  return dateOf(day).dayOfWeek;
}

/** The first day of a margin before a due point, on the calendar or on any other axis. */
export function earliest(due: number, { size, calendar }: DayMargin): number {
  if (calendar === undefined) return due - size;
  const back = dateOf(due).subtract({ months: calendar.count }, { overflow: 'constrain' });
  return dayOf(calendar.unit === 'months' ? back : periodAt(back, calendar.period).start) + (calendar.less ?? 0) - (calendar.plus ?? 0);
}

/** The last day of a margin after a due point. */
export function latest(due: number, { size, calendar }: DayMargin): number {
  return calendar === undefined ? due + size : addSpan(due, calendar);
}

/** A moment so much later; a span in minutes keeps the minute where there is one. */
export function later(when: When, span: CalendarSpan, k = 1): When {
  if (span.unit !== 'minutes') return { day: addSpan(when.day, span, k), minute: null };
  if (when.minute === null) return { day: addSpan(when.day, span, k), minute: null };
  const total = when.minute + k * span.count;
  return { day: when.day + Math.floor(total / 1440), minute: ((total % 1440) + 1440) % 1440 };
}

/** §1: b is after a. */
export function after(b: When, a: When): boolean {
  return b.day > a.day || (b.day === a.day && b.minute !== null && a.minute !== null && b.minute > a.minute);
}

/** §1: b is not before a. */
export function notBefore(b: When, a: When): boolean {
  return !after(a, b);
}

/** What stands first on a list: by day, by minute (none noted: first), by id. */
export function inOrder(a: { readonly when: When; readonly id: string }, b: { readonly when: When; readonly id: string }): number {
  if (a.when.day !== b.when.day) return a.when.day - b.when.day;
  if (a.when.minute !== b.when.minute) return (a.when.minute ?? -1) - (b.when.minute ?? -1);
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}

/** Minutes from a to b, where both were noted to the minute. */
export function minutesFrom(a: When, b: When): number | null {
  return a.minute === null || b.minute === null ? null : (b.day - a.day) * 1440 + b.minute - a.minute;
}
