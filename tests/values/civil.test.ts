import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { civilOf, dayNumber, dayOf, daysInMonth, formatDate, isLeapYear, parseDate } from '../../src/values/civil.js';
import type { Day } from '../../src/values/moment.js';

// What an ISO date of four digits can name.
const FIRST_DAY = dayNumber({ year: 1, month: 1, day: 1 });
const LAST_DAY = dayNumber({ year: 9999, month: 12, day: 31 });
const anyDay = fc.integer({ min: FIRST_DAY, max: LAST_DAY }).map((day) => day as Day);
const epoch = Temporal.PlainDate.from('1970-01-01');

describe('day numbers', () => {
  test('agree with Temporal on every day that four digits can name (sampled)', () => {
    fc.assert(
      fc.property(anyDay, (day) => {
        const theirs = epoch.add({ days: day });
        expect(civilOf(day)).toEqual({ year: theirs.year, month: theirs.month, day: theirs.day });
        expect(dayNumber(civilOf(day))).toBe(day);
        expect(formatDate(day)).toBe(theirs.toString());
        expect(dayOf(theirs.toString())).toBe(day);
      }),
      { numRuns: 2000 },
    );
  });
  test('go forward and back through 400 years without a gap', () => {
    let day = dayNumber({ year: 1899, month: 12, day: 31 });
    for (let year = 1900; year < 2300; year++)
      for (let month = 1; month <= 12; month++)
        for (let dayOfMonth = 1; dayOfMonth <= daysInMonth(year, month); dayOfMonth++) {
          day = (day + 1) as Day;
          if (dayNumber({ year, month, day: dayOfMonth }) !== day) throw new Error(`${year}-${month}-${dayOfMonth}`);
          const back = civilOf(day);
          if (back.year !== year || back.month !== month || back.day !== dayOfMonth) throw new Error(formatDate(day));
        }
    expect(formatDate(day)).toBe('2299-12-31');
  });
  test('keep the Gregorian leap years', () => {
    expect([1900, 2000, 2024, 2025, 2100].map(isLeapYear)).toEqual([false, true, true, false, false]);
  });
});

describe('ISO dates', () => {
  test.each([
    ['2025-02-29', { kind: 'no-such-day', lastDay: 28 }],
    ['2024-02-30', { kind: 'no-such-day', lastDay: 29 }],
    ['2024-04-31', { kind: 'no-such-day', lastDay: 30 }],
    ['2024-04-00', { kind: 'no-such-day', lastDay: 30 }],
    ['2024-13-01', { kind: 'no-such-day', lastDay: null }],
    ['2024-00-01', { kind: 'no-such-day', lastDay: null }],
    ['0000-01-01', { kind: 'not-a-date' }],
    ['2024-4-1', { kind: 'not-a-date' }],
    ['2024-04-01T00:00', { kind: 'not-a-date' }],
    [' 2024-04-01', { kind: 'not-a-date' }],
    ['٢٠٢٤-٠٤-٠١', { kind: 'not-a-date' }],
    ['', { kind: 'not-a-date' }],
  ])('%j is refused', (text, result) => {
    expect(parseDate(text)).toEqual(result);
    expect(dayOf(text)).toBeNull();
  });
  test('read the first and the last', () => {
    expect(dayOf('0001-01-01')).toBe(FIRST_DAY);
    expect(dayOf('9999-12-31')).toBe(LAST_DAY);
    expect(formatDate((LAST_DAY + 1) as Day)).toBe('+010000-01-01');
  });
});
