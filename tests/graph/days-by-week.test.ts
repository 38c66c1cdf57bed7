/** Marks by the week (docs/meaning.md §4, "On marks"), against published dates and against another reader of calendar rules. */
import fc from 'fast-check';
import { RRuleTemporal } from 'rrule-temporal';
import { describe, expect, test } from 'vitest';
import { everyMarkedDay } from '../../src/graph/days-by-week.js';
import type { CalendarMarksNode } from '../../src/graph/rule-graph.js';
import { civilOf, dayOf, formatDate } from '../../src/values/civil.js';
import { compileText } from '../support/compile-text.js';

function ruleOf(every: string): CalendarMarksNode {
  const found = compileText(`task t "Task" every ${every}`).nodes[0];
  if (found?.kind !== 'calendar-marks') throw new Error('no marks');
  return found;
}

/** The marks of a rule from one day to another. */
function marks(every: string, from: string, to: string): readonly string[] {
  const [first, last] = [from, to].map((text) => {
    const day = dayOf(text);
    if (day === null) throw new Error(`no such day: ${text}`);
    const { year, month } = civilOf(day);
    return year * 12 + month - 1;
  });
  const node = ruleOf(every);
  const months = Array.from({ length: (last ?? 0) - (first ?? 0) + 1 }, (_, ahead) => (first ?? 0) + ahead);
  return months.flatMap((month) => everyMarkedDay(node, month).map(formatDate)).filter((day) => day >= from && day <= to);
}

describe('published dates', () => {
  test.each([
    // 5 U.S.C. 6103(a): Memorial Day, Labor Day, Thanksgiving Day, as the Office of Personnel Management lists them for 2026.
    ['year on the last Monday of May, the first Monday of September, the fourth Thursday of November', '2026-05-25 2026-09-07 2026-11-26'],
    // 15 U.S.C. 260a: from the second Sunday of March to the first Sunday of November.
    ['year on the second Sunday of March and the first Sunday of November', '2026-03-08 2026-11-01'],
    // Directive 2000/84/EC: from the last Sunday in March to the last Sunday in October.
    ['year on the last Sunday of March, the last Sunday of October', '2026-03-29 2026-10-25'],
  ])('every %s', (every, days) => {
    expect(marks(every, '2026-01-01', '2026-12-31')).toEqual(days.split(' '));
  });

  // RFC 5545 §3.8.5.3, its examples, from memory; the test below has them from another implementation.
  test.each([
    ['month on the first Friday', '1997-09-02', '1998-06-30', '0905 1003 1107 1205 0102 0206 0306 0403 0501 0605'],
    ['2 months on the first Sunday and the last Sunday', '1997-09-07', '1998-06-30', '0907 0928 1102 1130 0104 0125 0301 0329 0503 0531'],
    [
      '2 weeks on Monday, Wednesday and Friday from 1997-09-01',
      '1997-08-01',
      '1997-12-23',
      '0901 0903 0905 0915 0917 0919 0929 1001 1003 1013 1015 1017 1027 1029 1031 1110 1112 1114 1124 1126 1128 1208 1210 1212 1222',
    ],
  ])('every %s', (every, from, to, days) => {
    expect(marks(every, from, to).map((day) => day.slice(5).replace('-', ''))).toEqual(days.split(' '));
  });
});

describe('another reader of calendar rules says the same', () => {
  const DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];
  const short = (day: string): string => day.slice(0, 2).toUpperCase();
  const occurrences = (start: string, rule: string): readonly string[] =>
    new RRuleTemporal({ rruleString: `DTSTART;VALUE=DATE:${start.replaceAll('-', '')}\nRRULE:${rule};COUNT=30` })
      .all()
      .map((at) => at.toPlainDate().toString());
  const same = (every: string, start: string, rule: string): void => {
    const theirs = occurrences(start, rule);
    expect(marks(every, start, theirs.at(-1) ?? start)).toEqual(theirs);
  };

  test('of the n-th and the last day of a month', () => {
    fc.assert(
      fc.property(fc.constantFrom(...DAYS), fc.constantFrom(1, 2, 3, 4, -1), (day, nth) => {
        const which = ['first', 'second', 'third', 'fourth'][nth - 1] ?? 'last';
        same(`month on the ${which} ${day}`, '2026-01-01', `FREQ=MONTHLY;BYDAY=${nth}${short(day)}`);
        same(`year on the ${which} ${day} of May`, '2026-01-01', `FREQ=YEARLY;BYMONTH=5;BYDAY=${nth}${short(day)}`);
      }),
      { numRuns: 20 },
    );
  });

  test('of every so many weeks', () => {
    const start = fc.integer({ min: 20_000, max: 21_000 });
    const days = fc.subarray(DAYS, { minLength: 1 });
    fc.assert(
      fc.property(start, fc.integer({ min: 2, max: 9 }), days, (from, every, named) => {
        // The first of all is the first named day from there on.
        const first = Array.from({ length: 7 }, (_, ahead) => from + ahead).find((day) => named.includes(DAYS[(day + 3) % 7] ?? ''));
        const text = formatDate((first ?? from) as never);
        same(
          `${every} weeks on ${named.join(', ')} from ${text}`,
          text,
          `FREQ=WEEKLY;INTERVAL=${every};WKST=MO;BYDAY=${named.map(short).join(',')}`,
        );
      }),
      { numRuns: 30 },
    );
  });
});
