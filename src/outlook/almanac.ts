import { addAmount, daysBeyond } from '../graph/calendar-amount.js';
import type { CalendarAmount } from '../graph/rule-graph.js';
import { addMonths, firstOfMonth } from '../values/calendar.js';
import { civilOf, daysInMonth } from '../values/civil.js';
import type { Day } from '../values/moment.js';
import { FAR } from './due-days.js';

/** The months of a time, laid out so that a span of months from a day is looked up and not reckoned. */
export interface Almanac {
  readonly from: Day;
  /** For each day from `from` on: which of the months it lies in, and which day of it. */
  readonly month: Int32Array;
  readonly dayOfMonth: Int32Array;
  /** For each month: its first day and its length. */
  readonly starts: Int32Array;
  readonly lengths: Int32Array;
}

/** The almanac for the days `from` to `to`. */
export function almanacOf(from: Day, to: Day): Almanac {
  const days = Math.max(0, to - from) + 1;
  const [month, dayOfMonth] = [new Int32Array(days), new Int32Array(days)];
  const [starts, lengths]: [number[], number[]] = [[], []];
  for (let start = firstOfMonth(from); start <= to; start = addMonths(start, 1)) {
    const civil = civilOf(start);
    const length = daysInMonth(civil.year, civil.month);
    for (let day = Math.max(start, from); day < start + length && day - from < days; day += 1) {
      month[day - from] = starts.length;
      dayOfMonth[day - from] = day - start + 1;
    }
    starts.push(start);
    lengths.push(length);
  }
  return { from, month, dayOfMonth, starts: Int32Array.from(starts), lengths: Int32Array.from(lengths) };
}

/** The day that lies a calendar span after a day of the almanac, as `addAmount` has it; FAR where it lies in no month of it, or is less than a day on. */
export function spanOn({ from, month, dayOfMonth, starts, lengths }: Almanac, day: number, amount: CalendarAmount): number {
  if (amount.unit === 'minutes' || amount.unit === 'days' || isUneven(amount)) return spansAfter(day as Day, amount, 1);
  const target = (month[day - from] ?? 0) + amount.count;
  if (target >= starts.length) return FAR;
  const length = lengths[target] ?? 0;
  return (starts[target] ?? 0) + (amount.unit === 'calendar-months' ? length : Math.min(dayOfMonth[day - from] ?? 0, length)) - 1;
}

/** Whether a span does not end on the day, or at the end, of the month to which its months come. */
function isUneven(amount: CalendarAmount): boolean {
  return amount.period !== undefined || daysBeyond(amount) !== 0;
}

/** The day that lies so many calendar spans after any day, counted from it; FAR for spans of minutes. */
export function spansAfter(day: Day, amount: CalendarAmount, times: number): number {
  if (amount.unit === 'minutes') return FAR;
  return times === 0 ? day : Math.min(FAR, addAmount(day, amount, times));
}
