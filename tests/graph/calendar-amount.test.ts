import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addAmount, marginAfter, marginBefore } from '../../src/graph/calendar-amount.js';
import type { CalendarAmount, Margin } from '../../src/graph/rule-graph.js';
import { dayOf, formatDate } from '../../src/values/civil.js';
import type { Day } from '../../src/values/moment.js';

const day = (text: string): Day => dayOf(text) ?? (0 as Day);
const span = (unit: CalendarAmount['unit'], count: number, less?: number): CalendarAmount => ({
  on: 'calendar',
  unit,
  count,
  ...(less === undefined ? {} : { less }),
});
const margin = (unit: CalendarAmount['unit'], count: number, less?: number): Margin => ({
  size: 30 * count,
  calendar: span(unit, count, less),
});

describe('spans that fall short by days', () => {
  // Passed on 10 May, out on 9 May; two years of it fall short by one day, not by two.
  it.each([
    ['2026-05-10', 1, '2027-05-09'],
    ['2026-05-10', 2, '2028-05-09'],
    ['2027-03-01', 1, '2028-02-29'],
  ])('%s + %d × (12 months less 1 day) = %s', (from, k, to) => {
    expect(formatDate(addAmount(day(from), span('months', 12, 1), k))).toBe(to);
  });
});

describe('margins by the calendar', () => {
  // GOV.UK: out on 15 May, from 16 April. 14 CFR 135.301(a): June, from May to July.
  it.each([
    ['2026-05-15', margin('months', 1, 1), '2026-04-16', '2026-06-14'],
    ['2026-03-31', margin('months', 1), '2026-02-28', '2026-04-30'],
    ['2026-06-30', margin('calendar-months', 1), '2026-05-01', '2026-07-31'],
    ['2026-12-31', margin('calendar-months', 11), '2026-01-01', '2027-11-30'],
    ['2026-05-15', { size: 18 }, '2026-04-27', '2026-06-02'],
  ] as const)('of %s', (due, each, from, to) => {
    expect(formatDate(marginBefore(day(due), each) as Day)).toBe(from);
    expect(formatDate(marginAfter(day(due), each) as Day)).toBe(to);
  });

  it('begins no later than the due day and ends no earlier, and a longer one takes the shorter in', () => {
    const units = fc.constantFrom<'months' | 'calendar-months'>('months', 'calendar-months');
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40_000 }), units, fc.integer({ min: 1, max: 30 }), (due, unit, count) => {
        const [shorter, longer] = [margin(unit, count), margin(unit, count + 1)];
        expect(marginBefore(due, shorter)).toBeLessThanOrEqual(due);
        expect(marginAfter(due, shorter)).toBeGreaterThanOrEqual(due);
        expect(marginBefore(due, longer)).toBeLessThan(marginBefore(due, shorter));
        expect(marginAfter(due, longer)).toBeGreaterThan(marginAfter(due, shorter));
      }),
      { seed: 7 },
    );
  });
});
