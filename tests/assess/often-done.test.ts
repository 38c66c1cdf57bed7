/** Rules that ask for so many doings, so far apart (docs/meaning.md §4, "So many times within a span", "Apart"). */
import { describe, expect, test } from 'vitest';
import { ask } from '../support/ask.js';
import { done, type Happenings, history, moment } from '../support/history.js';

const look = (every: string, ...happened: Happenings) =>
  ask(`meter engine "Hours" counts h\ntask t "Task" every ${every}`, history(...happened), '2026-06-01');
const on = (...days: readonly string[]): Happenings => days.map((day) => [day, done('t')] as const);
const isNew = ['2024-01-01', { kind: 'machine', inService: '2024-01-01' }] as const;
const stated = ['2024-06-01', { kind: 'stated', task: 't' }] as const;
const day = (text: string) => ({ on: 'calendar', day: moment(text).day, goodThrough: false });

describe('twice within two years', () => {
  test('counts from the first of the last two, and rests on both', () => {
    const { stands, seen } = look('2 years 2 times', ...on('2024-01-01', '2025-01-01', '2026-01-01'));
    expect(stands()).toBe('clear 2027-01-01');
    expect(seen('interval')).toMatchObject({ entries: ['e2', 'e3'], stood: [day('2025-01-01'), day('2026-01-01')] });
    expect(look('2 years 2 times', ...on('2025-01-01', '2026-01-01')).stands()).toBe('clear 2027-01-01');
  });

  test('counts from the start where it was done once only, and is unrecorded where nobody knows that', () => {
    const once = look('2 years 2 times', isNew, ...on('2025-01-01'));
    expect(once.stands()).toBe('overdue 2026-01-01');
    expect(once.seen('interval').entries).toEqual(['e1', 'e2']);
    expect(once.seen('interval').note).toMatchObject({ is: 'doings-counted', of: 2, counted: [{ at: day('2025-01-01') }] });
    expect(look('2 years 2 times', ...on('2025-01-01')).stands()).toBe('unrecorded');
  });

  test('is unknown where the first of them is stated without a day; the other is told, since it makes that one the first', () => {
    const { stands, seen } = look('2 years 2 times', stated, ...on('2026-01-01'));
    expect(stands()).toBe('unknown');
    expect(seen('interval')).toMatchObject({ entries: ['e1', 'e2'], stood: [{ on: 'moment', at: moment('2026-01-01') }] });
  });
});

test('twice within so many hours: where the meter stood at each of both', () => {
  const at = (hours: number) => ({ on: 'meter', meter: 'engine', ticks: hours * 36_000 });
  const { stands, seen } = look(
    '100 h of engine 2 times',
    ['2026-03-01', done('t', { engine: 10 })],
    ['2026-04-01', done('t', { engine: 60 })],
  );
  expect(stands()).toBe('clear 110 h');
  expect(seen('interval').stood).toEqual([at(10), at(60)]);
  expect(look('100 h of engine 2 times', ...on('2026-03-01'), ['2026-04-01', done('t', { engine: 60 })]).stands()).toBe('unknown');
});

test('twice within so many hours, the second at none that anybody noted: it is one of the two, and stands nowhere', () => {
  const stated2 = ['2026-05-01', { kind: 'stated', task: 't', doneBy: '2026-04-01' }] as const;
  const { stands, seen } = look('100 h of engine 2 times', ['2026-03-01', done('t', { engine: 10 })], stated2);
  expect(stands()).toBe('clear 110 h');
  expect(seen('interval').stood).toEqual([{ on: 'meter', meter: 'engine', ticks: 360_000 }]);
});

test('twice within so many hours of a meter that was never read: unknown from the start on, and how often it was done is told', () => {
  const { stands, seen } = look('100 h of engine 2 times', isNew, ...on('2024-06-01'));
  expect(stands()).toBe('unknown');
  expect(seen('interval')).toMatchObject({ missing: [{ what: 'meter', meter: 'engine' }], note: { is: 'doings-counted', of: 2 } });
});

describe('so far apart', () => {
  const apart = '2 years 2 times, 100 days apart';

  test('a doing counts that is not before the last that counts and the span after it', () => {
    // 2025-04-11 is 100 days after the first.
    expect(look(apart, isNew, ...on('2025-01-01', '2025-04-10')).stands()).toBe('overdue 2026-01-01');
    expect(look(apart, isNew, ...on('2025-01-01', '2025-04-11')).stands()).toBe('clear 2027-01-01');
  });

  test('and is held against that one, not against another that does not count', () => {
    expect(look(apart, ...on('2025-01-01', '2025-03-01', '2025-04-11')).stands()).toBe('clear 2027-01-01');
    expect(look(apart, ...on('2025-01-01', '2025-04-11', '2025-06-01', '2025-07-20')).stands()).toBe('clear 2027-04-11');
  });

  test('which came too soon, and after which of those that count, is told and rests on both', () => {
    const { seen } = look(apart, ...on('2024-01-01', '2024-02-01', '2025-01-01', '2025-03-01', '2025-04-11', '2025-05-01'));
    const soon = (when: string, after: string, entry: string) => ({ when: moment(when), after: moment(after), entry });
    expect(seen('interval')).toMatchObject({
      entries: ['e3', 'e5', 'e4', 'e6'],
      note: { tooSoon: [soon('2025-03-01', '2025-01-01', 'e4'), soon('2025-05-01', '2025-04-11', 'e6')] },
    });
    const yearly = look('calendar year 2 times, 120 days apart', ...on('2025-11-20', '2026-01-10', '2026-04-10', '2026-05-09'));
    expect(yearly.seen('calendar-marks')).toMatchObject({
      entries: ['e1', 'e3', 'e2', 'e4'],
      note: { tooSoon: [soon('2026-01-10', '2025-11-20', 'e2'), soon('2026-05-09', '2026-04-10', 'e4')] },
    });
    expect(look(apart, ...on('2025-01-01', '2026-01-01')).seen('interval').note).not.toHaveProperty('tooSoon');
  });

  test('one without a day counts, and the next is not held against it', () => {
    expect(look(apart, isNew, stated, ...on('2024-06-01')).stands()).toBe('unknown');
    expect(look(apart, isNew, stated, ...on('2025-01-01', '2025-04-11')).stands()).toBe('clear 2027-01-01');
  });

  test('also of so many in each year', () => {
    const yearly = 'calendar year 2 times, 120 days apart';
    expect(look(yearly, ...on('2026-01-10', '2026-05-09')).seen('calendar-marks').note).toMatchObject({ done: 1, of: 2 });
    expect(look(yearly, ...on('2026-01-10', '2026-05-10')).seen('calendar-marks').note).toMatchObject({ done: 0, of: 2 });
    expect(look(yearly, ...on('2026-01-10', '2026-05-10')).stands()).toBe('clear 2027-12-31');
  });
});

test('a calendar week runs from Monday to Sunday', () => {
  // 2026-05-31 is a Sunday.
  const week = (...days: readonly string[]): string =>
    ask('task t "Task" every calendar week', history(...on(...days)), '2026-05-28').stands();
  expect(week('2026-05-25')).toBe('clear 2026-06-07');
  expect(week('2026-05-24')).toBe('clear 2026-05-31');
  expect(week('2026-05-17')).toBe('overdue 2026-05-24');
});
