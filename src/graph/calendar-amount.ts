/**
 * Calendar spans and margins, added to a day (docs/meaning.md §1).
 */
import { addCalendarMonths, addMonths, firstOfMonth } from '../values/calendar.js';
import { type Day, MINUTES_PER_DAY } from '../values/moment.js';
import type { CalendarAmount, Margin } from './rule-graph.js';

/**
 * Days by which k spans are longer than their months: 15 of `7 months plus 15 days` and 30 of two of them, but -1 of `12 months less 1 day`
 * however often it is repeated, for it means the day before that day comes round.
 */
export function daysBeyond({ less = 0, plus = 0 }: Pick<CalendarAmount, 'less' | 'plus'>, k = 1): number {
  return k * plus - less;
}

/**
 * A day plus k calendar spans, from the base each time, so that month ends do not drift. What a span falls short by (`less`) is taken
 * off once, what it has besides its months (`plus`) is added k times. Minutes are added as they are: to minutes, not to days.
 *
 * @example addAmount(2026-03-01, 12 months less 1 day, 2) // 2028-02-29
 */
export function addAmount(base: Day, amount: CalendarAmount, k = 1): Day {
  const { unit, count, period } = amount;
  const whole = unit === 'calendar-months' ? addCalendarMonths(base, k * count, period) : addPlain(base, amount, k);
  return (whole + daysBeyond(amount, k)) as Day;
}

/** The same where a span is of days or months (or minutes) and nothing less or more. */
export function addPlain(base: Day, { unit, count }: CalendarAmount, k: number): Day {
  return unit === 'months' ? addMonths(base, k * count) : ((base + k * count) as Day);
}

/**
 * The day on which a margin before a due day begins. One in months goes back by day and month; one in calendar months begins on the
 * first day of the month so many before the due day's own, or of its period.
 *
 * @example marginBefore(2026-05-15, 1 month less 1 day) // 2026-04-16
 */
export function marginBefore(due: number, { size, calendar }: Margin): number {
  switch (calendar?.unit) {
    case 'months':
      return addMonths(due as Day, -calendar.count) - daysBeyond(calendar);
    case 'calendar-months':
      return firstOfMonth(addMonths(due as Day, -calendar.count), calendar.period) - daysBeyond(calendar);
    default:
      return due - size;
  }
}

/** The last day of a margin after a due day; one in calendar months ends with the month so many after the due day's own. */
export function marginAfter(due: number, { size, calendar }: Margin): number {
  return calendar === undefined ? due + size : addAmount(due as Day, calendar);
}

/** The day that lies a calendar amount after another (minutes round up to whole days). */
export function dayAfter(day: Day, amount: CalendarAmount): Day {
  return amount.unit === 'minutes' ? ((day + Math.ceil(amount.count / MINUTES_PER_DAY)) as Day) : addAmount(day, amount);
}
