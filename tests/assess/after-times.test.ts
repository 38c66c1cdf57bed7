/** Work after so many times of something (docs/meaning.md §5, "after N times E"). */
import { describe, expect, test } from 'vitest';
import { ask } from '../support/ask.js';
import { done, type Happenings, history, moment } from '../support/history.js';

const look = (what: string, ...happened: Happenings) =>
  ask(
    `event knock "A hard knock"\ntask weld "Weld" every 1 year\ntask t "Task"\n  after ${what}`,
    history(...happened),
    '2026-05-20 18:00',
  );
const knocks = (...at: readonly string[]): Happenings => at.map((when) => [when, { kind: 'event', event: 'knock' }] as const);
const stands = (...happened: Happenings): string => look('3 times knock', ...happened).stands();

describe('after three times', () => {
  test('clear before, coming up with the last but one, due since the one that makes it so many', () => {
    expect(stands()).toBe('clear');
    expect(stands(...knocks('2026-05-01'))).toBe('clear');
    expect(stands(...knocks('2026-05-01', '2026-05-02'))).toBe('coming-up');
    expect(stands(...knocks('2026-05-01', '2026-05-02', '2026-05-03 10:00'))).toBe('due 2026-05-03 10:00');
    expect(stands(...knocks('2026-05-01', '2026-05-02', '2026-05-03', '2026-05-04'))).toBe('due 2026-05-03');
  });

  test('what a doing follows does not count any more', () => {
    const answered = [...knocks('2026-05-01', '2026-05-02', '2026-05-03'), ['2026-05-04', done('t')] as const];
    expect(stands(...answered)).toBe('clear');
    expect(stands(...answered, ...knocks('2026-05-05', '2026-05-06'))).toBe('coming-up');
    expect(stands(...answered, ...knocks('2026-05-05', '2026-05-06', '2026-05-07'))).toBe('due 2026-05-07');
    expect(stands(['2026-04-01', done('t')], ...knocks('2026-05-01', '2026-05-02', '2026-05-03'))).toBe('due 2026-05-03');
  });

  test('on its own day a doing follows what is not later by minutes, and one without a minute all of that day', () => {
    const two = knocks('2026-05-01', '2026-05-02');
    const third = (at: string, ...doings: readonly string[]): string =>
      stands(...two, ...knocks(at), ...doings.map((when) => [when, done('t')] as const));
    expect(third('2026-05-03 09:00', '2026-05-03 09:00')).toBe('clear');
    expect(third('2026-05-03', '2026-05-03 09:00')).toBe('clear');
    expect(third('2026-05-03 23:00', '2026-05-03')).toBe('clear');
    expect(third('2026-05-03 09:00', '2026-05-03 08:00', '2026-05-03 10:00')).toBe('clear');
    // One of the day has no minute: it may have been the last.
    expect(third('2026-05-03 23:00', '2026-05-03', '2026-05-03 08:00')).toBe('clear');
    // The day before says nothing of this one. The third then is the first without a doing.
    const later = look('3 times knock', ...two, ...knocks('2026-05-03 23:00'), ['2026-05-02', done('t')], ['2026-05-03 08:00', done('t')]);
    expect(later.seen('event').note).toMatchObject({ times: 1 });
  });

  test('of the doings of the last day the one without a minute answers, whatever else was done on it; of those before none', () => {
    const told = (...doings: readonly string[]) =>
      look('3 times knock', ...knocks('2026-05-03 23:00'), ...doings.map((when) => [when, done('t')] as const)).seen('event');
    expect(told('2026-05-03', '2026-05-03 08:00')).toMatchObject({
      entries: ['e2'],
      note: { times: 0, when: null, done: moment('2026-05-03') },
    });
    expect(told('2026-05-03 07:00', '2026-05-03 08:00')).toMatchObject({ entries: ['e1', 'e3'], note: { times: 1 } });
    expect(told('2026-05-02', '2026-05-03 08:00').note).toMatchObject({ times: 1, done: moment('2026-05-03 08:00') });
    expect(told('2026-05-03 08:00', '2026-05-03 23:00').note).toMatchObject({ times: 0 });
    expect(told('2026-05-01', '2026-05-02', '2026-05-03 08:00', '2026-05-03').note).toMatchObject({ times: 0 });
  });

  test('the record tells how many of them, the last, and the doing before; and rests on those', () => {
    const { seen } = look('3 times knock', ...knocks('2026-05-01'), ['2026-05-02', done('t')], ...knocks('2026-05-03', '2026-05-04'));
    expect(seen('event')).toMatchObject({
      state: 'coming-up',
      entries: ['e3', 'e4', 'e2'],
      reachedAt: null,
      note: { is: 'happened-times', times: 2, of: 3, when: moment('2026-05-04'), done: moment('2026-05-02') },
    });
    const due = look('3 times knock', ...knocks('2026-05-01', '2026-05-02', '2026-05-03', '2026-05-04'));
    expect(due.seen('event')).toMatchObject({
      state: 'due',
      reachedAt: moment('2026-05-03'),
      note: { times: 3, of: 3, when: moment('2026-05-03'), done: null },
    });
    expect(look('3 times knock').seen('event')).toMatchObject({ entries: [], note: { times: 0, of: 3, when: null, done: null } });
    expect(look('3 times knock').because()).toBeDefined();
  });
});

test('of other work, each time that it was done', () => {
  const weld = (...days: readonly string[]): Happenings => days.map((day) => [day, done('weld')] as const);
  expect(look('2 times weld', ...weld('2026-05-01')).stands()).toBe('coming-up');
  expect(look('2 times weld', ...weld('2026-05-01', '2026-05-02')).stands()).toBe('due 2026-05-02');
  expect(look('2 times weld', ...weld('2026-05-01', '2026-05-02'), ['2026-05-03', done('t')]).stands()).toBe('clear');
  expect(look('2 times weld', ['2026-05-01', { kind: 'stated', task: 'weld' }], ...weld('2026-05-02')).stands()).toBe('coming-up');
});
