import fc from 'fast-check';
import { RRuleTemporal } from 'rrule-temporal';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { addCalendarMonths, addDays, addMonths, firstOfMonth, MONTH_NAMES, monthName, monthNumber } from '../../src/values/calendar.js';
import { civilOf, dayNumber, dayOf, daysInMonth, formatDate } from '../../src/values/civil.js';
import type { Day } from '../../src/values/moment.js';

function day(text: string): Day {
  const found = dayOf(text);
  if (found === null) throw new Error(`no such day: ${text}`);
  return found;
}

const anyDay = fc.integer({ min: day('1900-01-01'), max: day('2100-12-31') }).map((number) => number as Day);
const plain = (of: Day): Temporal.PlainDate => Temporal.PlainDate.from(formatDate(of));

describe('adding months', () => {
  // TC39 Temporal, PlainDate.add, overflow "constrain" (its documentation and test262).
  test.each([
    ['2025-01-31', 1, '2025-02-28'],
    ['2024-01-31', 1, '2024-02-29'],
    ['2025-01-31', 2, '2025-03-31'],
    ['2024-02-29', 12, '2025-02-28'],
    ['2024-02-29', 48, '2028-02-29'],
    ['2024-03-31', -1, '2024-02-29'],
    ['2025-08-31', 6, '2026-02-28'], // LOLER regulation 9: six months
  ])('%s + %i months = %s', (from, count, to) => {
    expect(formatDate(addMonths(day(from), count))).toBe(to);
  });
  test('agrees with Temporal from any day, k × interval from the anchor', () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: 1, max: 36 }), fc.integer({ min: -40, max: 40 }), (anchor, interval, k) => {
        expect(formatDate(addMonths(anchor, k * interval))).toBe(
          plain(anchor)
            .add({ months: k * interval })
            .toString(),
        );
      }),
      { numRuns: 2000 },
    );
  });
  test('RFC 7529 §4.1: monthly from 2014-01-31 with SKIP=BACKWARD', () => {
    const rule = new RRuleTemporal({
      rruleString: 'DTSTART;VALUE=DATE:20140131\nRRULE:RSCALE=GREGORIAN;FREQ=MONTHLY;SKIP=BACKWARD;COUNT=4',
    });
    const theirs = rule.all().map((at) => at.toPlainDate().toString());
    expect(theirs).toEqual(['2014-01-31', '2014-02-28', '2014-03-31', '2014-04-30']);
    expect([0, 1, 2, 3].map((k) => formatDate(addMonths(day('2014-01-31'), k)))).toEqual(theirs);
  });
  test('RFC 5545 §3.8.5.3: BYMONTHDAY=15,30 leaves out the 30th that February lacks', () => {
    const rule = new RRuleTemporal({ rruleString: 'DTSTART;TZID=UTC:20070115T090000\nRRULE:FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5' });
    const theirs = rule.all().map((at) => at.toPlainDate().toString());
    const ours = [0, 1, 2]
      .flatMap((k) => [15, 30].map((of) => ({ ...civilOf(addMonths(day('2007-01-01'), k)), day: of })))
      .filter((civil) => civil.day <= daysInMonth(civil.year, civil.month))
      .map((civil) => formatDate(dayNumber(civil)));
    expect(ours).toEqual(theirs);
    expect(theirs).toEqual(['2007-01-15', '2007-01-30', '2007-02-15', '2007-03-15', '2007-03-30']);
  });
});

describe('calendar months', () => {
  // 14 CFR 91.409(a) and 91.411, as the FAA counts calendar months.
  test.each([
    ['2007-06-06', 12, '2008-06-30'],
    ['2020-07-22', 24, '2022-07-31'],
    ['2023-02-01', 12, '2024-02-29'],
  ])('done %s, %i calendar months: good through %s', (done, count, through) => {
    expect(formatDate(addCalendarMonths(day(done), count))).toBe(through);
  });
});

test('days later, and firsts of months', () => {
  expect(addDays(day('2024-02-28'), 2)).toBe(day('2024-03-01'));
  expect(firstOfMonth(day('2024-02-28'))).toBe(day('2024-02-01'));
});

test('month names there and back', () => {
  expect(MONTH_NAMES.map((name) => monthName(monthNumber(name) ?? 0))).toEqual([...MONTH_NAMES]);
  expect([monthNumber('april'), monthName(0), monthName(13)]).toEqual([null, null, null]);
});
