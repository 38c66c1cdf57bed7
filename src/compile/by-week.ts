/**
 * Marks by the week, as a node has them.
 */
import type { CalendarMarksNode } from '../graph/rule-graph.js';
import type { LimitNode } from '../syntax/tree.js';
import { dayIn } from './workshop.js';

/** What a limit that goes by the week has in its node instead of days of a month. */
export type CompileByWeek = (
  limit: Extract<LimitNode, { kind: 'calendar-marks' }>,
) => Partial<Pick<CalendarMarksNode, 'months' | 'weekdays' | 'weeks' | 'placed'>>;

/** `2 weeks on Monday from 2026-03-02`, `month on the first Monday, the third Monday`; nothing for marks that go by the month. */
export const compileByWeek: CompileByWeek = ({ number, byWeek }) => {
  if (byWeek === undefined) return {};
  const { days, from } = byWeek;
  if (from === undefined) {
    const placed = days.map(({ weekday, nth, month }) => ({
      weekday: weekday.weekday,
      // The second Monday is the first from day 8 on.
      ...(nth === undefined || nth === 'last' ? {} : { day: 7 * (nth - 1) + 1 }),
      ...(month === undefined ? {} : { month: month.month }),
    }));
    return { placed };
  }
  const weekdays = [...new Set(days.map(({ weekday }) => weekday.weekday))].sort((a, b) => a - b);
  return { months: 1, weekdays, weeks: { count: number?.value ?? 1, from: dayIn(from) } };
};
