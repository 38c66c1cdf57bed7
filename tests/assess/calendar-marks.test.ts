/** Marks on the calendar (docs/meaning.md §4, "On marks", "So many times in each"): which is owed, and which doings are counted. */
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/history/entry.js';
import { ask } from '../support/ask.js';
import { done, type Happenings, history, moment } from '../support/history.js';

const day = (text: string) => ({ on: 'calendar', day: moment(text).day, goodThrough: false });

describe('so many times in each year', () => {
  const since = (inService: string) => [inService, { kind: 'machine', inService }] as const;
  const times = (many: number, now: string, ...happened: Happenings) =>
    ask(`task t "Task" every calendar year ${many} times`, history(...happened), now);

  test('all marks are met by so many doings since their first days, also those of years before', () => {
    const twice = [since('2024-01-01'), ['2026-02-01', done('t')], ['2026-03-01', done('t')]] as const;
    expect(times(2, '2026-06-01', ...twice.slice(0, 2)).stands()).toBe('overdue 2025-12-31');
    expect(times(2, '2026-06-01', ...twice).stands()).toBe('clear 2027-12-31');
  });

  test('marks of a machine of unknown age count from the period of the first doing on, while there are too few', () => {
    const both = [
      ['2025-11-01', done('t')],
      ['2026-02-01', done('t')],
    ] as const;
    expect(times(3, '2026-06-01', ...both).stands()).toBe('overdue 2025-12-31');
    expect(times(3, '2026-06-01', ...both, ['2026-03-01', done('t')]).stands()).toBe('clear 2026-12-31');
  });

  test('a doing on the first day of the period is one of them, and one before it is not', () => {
    const found = times(3, '2026-06-01', since('2024-06-01'), ['2024-11-01', done('t')], ['2025-01-01', done('t')]).seen('calendar-marks');
    expect(found).toMatchObject({ note: { is: 'times-done', done: 1, of: 3, missed: 1 }, stood: [day('2024-11-01'), day('2025-01-01')] });
    expect([...found.entries].sort()).toEqual(['e1', 'e3']);
  });

  test('where there are so many, each of the last of them is cited: it takes all to know which mark is met', () => {
    const found = times(3, '2026-06-01', ['2025-03-01', done('t')], ['2025-06-01', done('t')], ['2026-02-01', done('t')]);
    expect(found.stands()).toBe('clear 2026-12-31');
    expect(found.seen('calendar-marks').entries).toEqual(['e1', 'e2', 'e3']);
    expect(found.seen('calendar-marks').note).toEqual({ is: 'times-done', done: 1, of: 3, missed: 0 });
  });

  test('one that is stated without a day is among them, and stands nowhere', () => {
    const stated = ['2026-02-01', { kind: 'stated', task: 't' }] as const;
    const found = times(3, '2026-06-01', since('2025-06-01'), stated, ['2026-03-01', done('t')]).seen('calendar-marks');
    expect(found.stood).toEqual([day('2026-03-01')]);
    expect(found.note).toMatchObject({ done: 1, of: 3 });
  });

  test('where the one to count from is stated without a day nobody can say, and the later ones that make it so are told', () => {
    const stated = (id: string): Entry => ({ kind: 'stated', id, on: '2026-02-01', task: 't' });
    const dated: Entry = { kind: 'done', id: 'c', on: '2026-03-01', tasks: ['t'] };
    const asked = ask('task t "Task" every calendar year 2 times', [stated('a'), stated('b'), dated], '2026-06-01');
    expect(asked.stands()).toBe('unknown');
    expect(asked.seen('calendar-marks')).toMatchObject({ entries: ['b', 'c'], stood: [{ on: 'moment', at: moment('2026-03-01') }] });
  });
});

describe('a named month', () => {
  const inFebruary = (now: string): string => ask('task t "Task" every year in February', history(['2023-02-10', done('t')]), now).stands();

  test('is over after its last day, in a leap year too', () => {
    expect(inFebruary('2024-01-31')).toBe('coming-up 2024-02-01');
    expect(inFebruary('2024-02-29')).toBe('due 2024-02-01');
    expect(inFebruary('2024-03-01')).toBe('overdue 2024-02-01');
    expect(inFebruary('2025-02-28')).toBe('due 2025-02-01');
    expect(inFebruary('2025-03-01')).toBe('overdue 2025-02-01');
  });
});

describe('multiples on a meter', () => {
  const multiples = (...happened: Happenings): string =>
    ask(
      'meter engine "Hours" counts h\ntask t "Task" every multiple of 50 h of engine\n  allow 10 h early',
      history(...happened),
      '2026-06-01',
    ).stands();

  test('are met early by a doing, and not by the start of service', () => {
    const later = ['2026-05-01', { kind: 'reading', meters: { engine: 44 } }] as const;
    expect(multiples(['2026-01-01', done('t', { engine: 41 })], later)).toBe('clear 100 h');
    expect(multiples(['2026-01-01', { kind: 'machine', inService: '2026-01-01', meters: { engine: 41 } }], later)).toBe('clear 50 h');
  });
});
