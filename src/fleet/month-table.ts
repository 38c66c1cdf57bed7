import { addCalendarMonths, addMonths } from '../values/calendar.js';
import { dayNumber } from '../values/civil.js';
import type { Day } from '../values/moment.js';

const FIRST_YEAR = 1900;
const LAST_YEAR = 2100;
const MONTHS = (LAST_YEAR - FIRST_YEAR + 1) * 12;

/** The months of two centuries laid out, so that a day is found and a month added without reckoning. Outside them it is reckoned. */
export class MonthTable {
  /** The day number of the first of each month, from January 1900; one more at the end. */
  private readonly firsts: Int32Array;
  /** The month of each day. */
  private readonly monthOf: Uint16Array;
  private readonly firstDay: number;

  constructor() {
    this.firsts = Int32Array.from({ length: MONTHS + 1 }, (_, i) =>
      dayNumber({ year: FIRST_YEAR + Math.floor(i / 12), month: (i % 12) + 1, day: 1 }),
    );
    this.firstDay = this.first(0);
    this.monthOf = new Uint16Array(this.first(MONTHS) - this.firstDay);
    for (let month = 0; month < MONTHS; month += 1)
      this.monthOf.fill(month, this.first(month) - this.firstDay, this.first(month + 1) - this.firstDay);
  }

  /** The number of a day; NaN for one that does not exist or lies outside the table. */
  day(year: number, month: number, dayOfMonth: number): number {
    if (!(year >= FIRST_YEAR && year <= LAST_YEAR && month >= 1 && month <= 12 && dayOfMonth >= 1)) return Number.NaN;
    const index = (year - FIRST_YEAR) * 12 + month - 1;
    const day = this.first(index) + dayOfMonth - 1;
    return day < this.first(index + 1) ? day : Number.NaN;
  }

  /** As `addMonths`. */
  addMonths(day: number, count: number): number {
    const month = this.monthOf[day - this.firstDay];
    if (month === undefined || month + count < 0 || month + count >= MONTHS) return addMonths(day as Day, count);
    const due = day - this.first(month) + this.first(month + count);
    const last = this.first(month + count + 1) - 1;
    return due < last ? due : last;
  }

  /** As `addCalendarMonths`. */
  addCalendarMonths(day: number, count: number): number {
    const month = this.monthOf[day - this.firstDay];
    if (month === undefined || month + count < 0 || month + count >= MONTHS) return addCalendarMonths(day as Day, count);
    return this.first(month + count + 1) - 1;
  }

  private first(month: number): number {
    return this.firsts[month] as number;
  }
}
