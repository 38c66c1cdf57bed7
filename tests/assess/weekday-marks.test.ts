/** Days of the week in months, in years and in every so many weeks (docs/meaning.md §4, "On marks"): what meets them, and what is on no record. */
import { describe, expect, test } from 'vitest';
import { ask } from '../support/ask.js';
import { done, type Happenings, history } from '../support/history.js';

const stands = (every: string, now: string, ...happened: Happenings): string =>
  ask(`task t "Task" every ${every}`, history(...happened), now).stands();
const on = (...days: readonly string[]): Happenings => days.map((day) => [day, done('t')] as const);
const isNew = (day: string) => [day, { kind: 'machine', inService: day }] as const;

describe('the first Monday of each month', () => {
  // 2026-04-06, 2026-05-04 and 2026-06-01 are first Mondays.
  const monthly = 'month on the first Monday';

  test('is due on that day, overdue after it, and met by work on it or later', () => {
    expect(stands(monthly, '2026-05-03', ...on('2026-04-06'))).toBe('coming-up 2026-05-04');
    expect(stands(monthly, '2026-05-04', ...on('2026-04-06'))).toBe('due 2026-05-04');
    expect(stands(monthly, '2026-05-05', ...on('2026-04-06'))).toBe('overdue 2026-05-04');
    expect(stands(monthly, '2026-05-05', ...on('2026-05-04'))).toBe('clear 2026-06-01');
    expect(stands(monthly, '2026-05-20', ...on('2026-05-19'))).toBe('clear 2026-06-01');
  });

  test('is not met by work before it, but for the allowance', () => {
    expect(stands(monthly, '2026-05-04', ...on('2026-05-01'))).toBe('due 2026-05-04');
    expect(stands(`${monthly} allow 3 days early`, '2026-05-04', ...on('2026-05-01'))).toBe('clear 2026-06-01');
    expect(stands(`${monthly} allow 2 days late`, '2026-05-06', ...on('2026-04-06'))).toBe('due 2026-05-04');
  });

  test('of several missed only the latest counts, and nothing on record is unrecorded', () => {
    expect(stands(monthly, '2026-06-03', ...on('2026-03-02'))).toBe('overdue 2026-06-01');
    expect(stands(monthly, '2026-05-20')).toBe('unrecorded');
    expect(stands(monthly, '2026-05-20', isNew('2026-05-10'))).toBe('clear 2026-06-01');
  });
});

test('the last Friday of a month, and of one month in every second year', () => {
  expect(stands('month on the last Friday', '2026-05-28', ...on('2026-04-24'))).toBe('coming-up 2026-05-29');
  expect(stands('year on the last Friday of March', '2026-04-01', ...on('2025-03-28'))).toBe('overdue 2026-03-27');
  expect(stands('2 years on the last Friday of March', '2026-04-01', ...on('2026-03-27'))).toBe('clear 2028-03-31');
});

describe('every second Monday', () => {
  // From the 2nd of March 2026: the 16th, the 30th, the 13th of April.
  const fortnightly = '2 weeks on Monday from 2026-03-02';

  test('keeps to its weeks, whenever it was done', () => {
    expect(stands(fortnightly, '2026-03-20', ...on('2026-03-16'))).toBe('clear 2026-03-30');
    expect(stands(fortnightly, '2026-03-25', ...on('2026-03-23'))).toBe('clear 2026-03-30');
    expect(stands(fortnightly, '2026-03-31', ...on('2026-03-23'))).toBe('overdue 2026-03-30');
    expect(stands(fortnightly, '2030-01-15', ...on('2029-12-24'))).toBe('overdue 2030-01-14');
  });

  test('has its first day on that date: before it nothing was missed', () => {
    expect(stands(fortnightly, '2026-02-10')).toBe('clear 2026-03-02');
    expect(stands(fortnightly, '2026-03-01')).toBe('coming-up 2026-03-02');
    expect(stands(fortnightly, '2026-03-02')).toBe('unrecorded');
    expect(stands(fortnightly, '2026-03-02', isNew('2025-06-01'))).toBe('due 2026-03-02');
    expect(stands(fortnightly, '2026-03-05', ...on('2026-02-20'))).toBe('overdue 2026-03-02');
  });

  test('which is told before it, and rests on nothing that was noted', () => {
    const { seen } = ask(`task t "Task" every ${fortnightly}`, [], '2026-03-01');
    expect(seen('calendar-marks')).toMatchObject({ state: 'coming-up', entries: [], limit: { base: { why: 'mark' }, left: 1 } });
  });

  test('of several days in a week those before the first of all do not count', () => {
    const twice = '2 weeks on Monday and Thursday from 2026-03-05';
    expect(stands(twice, '2026-03-04', isNew('2026-01-01'))).toBe('coming-up 2026-03-05');
    expect(stands(twice, '2026-03-06', ...on('2026-03-05'))).toBe('clear 2026-03-16');
    expect(stands(twice, '2026-03-18', ...on('2026-03-16'))).toBe('coming-up 2026-03-19');
  });
});
