/**
 * Amounts and points on the axes of limits, in words.
 */
import type { DuePoint } from '../assess/assessment.js';
import { assertNever } from '../base/assert-never.js';
import type { Names } from '../explain/explanation.js';
import { daysBeyond } from '../graph/calendar-amount.js';
import type { Amount, CalendarAmount } from '../graph/rule-graph.js';
import { durationText, numberText } from '../values/number-text.js';
import { unitsOf } from '../values/ticks.js';
import { counted, inSentence } from './count-in-words.js';
import { dayInWords, momentInWords } from './dates-in-words.js';
import { safeText } from './safe-text.js';

/** The names that words are found by; an id without one speaks for itself. */
export type Titles = Names;

/** `100 h`; ticks of a meter in its unit. */
export function meterQuantity(ticks: number, meter: string, names: Titles): string {
  return `${numberText(unitsOf(ticks))} ${safeText(names.meters[meter]?.unit ?? 'h')}`;
}

/** The meter as it stands in a sentence: `the hour meter on the dash`. */
export function theMeter(meter: string, names: Titles): string {
  return `the ${titleOf(names.meters[meter]?.title, meter)}`;
}

/** A title inside a sentence, or the id where there is none. */
export function titleOf(title: string | undefined, id: string): string {
  return inSentence(safeText(title ?? id));
}

/** `100 h of engine`, `12 months`, `30 min of work in mowing growth above knee height`. */
export function amountInWords(amount: Amount, names: Titles): string {
  switch (amount.on) {
    case 'meter':
      return `${meterQuantity(amount.ticks, amount.meter, names)} of ${safeText(amount.meter)}`;
    case 'work':
      return `${durationText(amount.ticks)} of work${inDuty(amount.duty ?? null, names)}`;
    case 'calendar':
      return calendarInWords(amount);
    default:
      return assertNever(amount);
  }
}

/** A title in quotes, as it was written, or the id where there is none. */
export function quoted(title: string | undefined, id: string): string {
  return `“${safeText(title ?? id)}”`;
}

/** ` in dry, dusty ground`, or nothing. */
export function inDuty(duty: string | null, names: Titles): string {
  return duty === null ? '' : ` in ${titleOf(names.duties[duty], duty)}`;
}

/** Whole years, weeks and hours are said as such; `12 months less 1 day`, `7 months plus 15 days`. */
export function calendarInWords(amount: CalendarAmount): string {
  const beyond = daysBeyond(amount);
  const days = beyond === 0 ? '' : ` ${beyond < 0 ? 'less' : 'plus'} ${counted(Math.abs(beyond), 'day')}`;
  return `${wholeInWords(amount)}${days}`;
}

const PERIODS = { 3: 'calendar quarter', 6: 'calendar half-year', 12: 'calendar year' } as const;

function wholeInWords({ unit, count, period }: CalendarAmount): string {
  switch (unit) {
    case 'minutes':
      return count % 60 === 0 ? counted(count / 60, 'hour') : counted(count, 'minute');
    case 'days':
      return count % 7 === 0 && count > 7 ? counted(count / 7, 'week') : counted(count, 'day');
    case 'months':
      return count % 12 === 0 && count > 12 ? counted(count / 12, 'year') : counted(count, 'month');
    case 'calendar-months':
      return period === undefined || count % period !== 0 ? counted(count, 'calendar month') : counted(count / period, PERIODS[period]);
    default:
      return assertNever(unit);
  }
}

/** A point: `1300 h of engine`, `2 March 2027`. */
export function pointInWords(point: DuePoint, names: Titles): string {
  switch (point.on) {
    case 'meter':
      return `${meterPoint(point, names)} of ${safeText(point.meter)}`;
    case 'calendar':
      return dayInWords(point.day);
    case 'moment':
      return momentInWords(point.at);
    case 'work':
      return `${durationText(point.ticks)} of work${inDuty(point.duty, names)}`;
    default:
      return assertNever(point);
  }
}

/** Hours in a duty can use up a limit so often that its due point lies before the meter's first hour. */
function meterPoint({ ticks, meter }: Extract<DuePoint, { on: 'meter' }>, names: Titles): string {
  return ticks < 0 ? `before ${meterQuantity(0, meter, names)}` : meterQuantity(ticks, meter, names);
}

/** A point without its axis, for a line on which the axis is already named. */
export function pointOnAxis(point: DuePoint, names: Titles): string {
  if (point.on === 'meter') return meterPoint(point, names);
  return point.on === 'work' ? durationText(point.ticks) : pointInWords(point, names);
}

/** A length on the axis of a point, never negative: `4 h`, `3 days`, `20 minutes`. */
export function lengthInWords(length: number, point: DuePoint, names: Titles): string {
  const size = Math.abs(length);
  switch (point.on) {
    case 'meter':
      return meterQuantity(size, point.meter, names);
    case 'calendar':
      return counted(size, 'day');
    case 'moment':
      return size < 60 ? counted(size, 'minute') : durationText(size * 600);
    case 'work':
      return durationText(size);
    default:
      return assertNever(point);
  }
}

/** `3 hours`, `45 minutes`. */
export function minutesInWords(count: number): string {
  return calendarInWords({ on: 'calendar', unit: 'minutes', count });
}

/** What happened, by its title: an event, or a task whose doing is one. */
export function happeningTitle(event: string, names: Titles): string {
  return quoted(names.events[event] ?? names.tasks[event], event);
}

/** `“The blade struck a stone” happened`, `“Renew the blade” was done`. */
export function happenedInWords(event: string, names: Titles): string {
  return `${happeningTitle(event, names)} ${isNoted(event, names) ? 'happened' : 'was done'}`;
}

function isNoted(event: string, names: Titles): boolean {
  return names.events[event] !== undefined || names.tasks[event] === undefined;
}
