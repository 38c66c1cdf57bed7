/** Which doing counts as the last (docs/meaning.md §1, §3): the order of doings, and what a statement without a day says. */
import { describe, expect, test } from 'vitest';
import { ask } from '../support/ask.js';
import { done, type Happenings, history } from '../support/history.js';

const state = (declarations: string, now: string, happened: Happenings, intent = {}): string =>
  ask(declarations, history(...happened), now, { intent }).stands();

test('the last doing is the latest, whichever task it was that was named', () => {
  const tasks = 'task t "Look" before each day\'s work\ntask big "Service" every 1 year covers t';
  const looked = ['2026-05-10', done('t')] as const;
  const outing = ['2026-05-09', { kind: 'outing', hours: 3 }] as const;
  const service = (day: string) => [day, done('big')] as const;
  const work = { outing: {} };
  expect(state(tasks, '2026-05-11', [looked, outing, service('2026-05-05')], work)).toBe('clear');
  expect(state(tasks, '2026-05-11', [['2026-05-05', done('t')], outing, service('2026-05-10')], work)).toBe('clear');
  expect(state(tasks, '2026-05-11', [['2026-05-05', done('t')], outing, service('2026-05-06')], work)).toBe('due 2026-05-11');
});

test('a doing of the same day without a minute is not before what happened on it, though one with a minute is', () => {
  const task = 'task t "Look at the filter" on refuelling';
  const fuel = ['2026-05-10 10:00', { kind: 'refuelled' }] as const;
  const early = ['2026-05-10 09:00', done('t')] as const;
  expect(state(task, '2026-05-11', [fuel, early])).toBe('due 2026-05-10 10:00');
  expect(state(task, '2026-05-11', [fuel, early, ['2026-05-10', done('t')]])).toBe('clear');
});

describe('what was done at no stated day', () => {
  const stated = ['2026-05-01', { kind: 'stated', task: 't' }] as const;

  test('comes before every record: it answers nothing that is on it', () => {
    expect(state('task t "Task" on refuelling', '2026-05-11', [stated, ['2026-04-01', { kind: 'refuelled' }]])).toBe('due 2026-04-01');
    expect(state('task t "Task" within 2 h before each outing', '2026-05-11 08:00', [stated], { outing: {} })).toBe('due 2026-05-11 08:00');
  });

  test('or on the very day on which the machine entered service, meets a single first service', () => {
    const first = 'meter engine "Hours" counts h\ntask t "Task" first at 20 h of engine\n  every 12 months';
    const isNew = ['2026-01-01', { kind: 'machine', inService: '2026-01-01' }] as const;
    expect(state(first, '2026-05-11', [isNew])).toBe('unknown');
    expect(state(first, '2026-05-11', [isNew, ['2026-05-01', { kind: 'stated', task: 't', doneBy: '2026-01-01' }]])).toBe(
      'clear 2027-01-01',
    );
    expect(state(first, '2026-05-11', [isNew, stated])).toBe('unknown');
  });
});
