/** Outings between two moments, and how much of one counts that a doing cuts in two (docs/meaning.md §4, "Work time"). */
import { describe, expect, test } from 'vitest';
import { worldOf } from '../../src/assess/assess.js';
import { outingsWithin } from '../../src/assess/outings-within.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { ask } from '../support/ask.js';
import { compileText } from '../support/compile-text.js';
import { done, history, moment } from '../support/history.js';

describe('outings of which some part may lie between two moments', () => {
  const graph = compileText('task t "Task" every 10 h of work');
  const now = moment('2026-05-20');
  const entries = history(
    ['2026-05-01', { kind: 'outing', hours: 1 }],
    ['2026-05-02', { kind: 'outing', untilOn: '2026-05-04', hours: 9 }],
    ['2026-05-03', { kind: 'outing', hours: 1 }],
    ['2026-05-06', { kind: 'outing', hours: 1 }],
    ['2026-05-08', { kind: 'outing', untilOn: '2026-05-25' }],
  );
  const within = (from: string | null, to: string | null): string => {
    const world = worldOf(graph, readTimeline(entries, graph, now), now, {});
    const found = outingsWithin(world, from === null ? null : moment(from), to === null ? null : moment(to));
    expect(world.steps, 'a step for each').toBe(found.length);
    return found.map(({ entry }) => entry).join(' ');
  };

  test('are all where neither is told', () => expect(within(null, null)).toBe('e1 e2 e3 e4 e5'));

  test('leave out those that ended on a day before the one, in an order that is that of their starts', () => {
    expect(within('2026-05-01', null)).toBe('e1 e2 e3 e4 e5');
    // The third ended before; the second, which began before it, had not.
    expect(within('2026-05-04', null)).toBe('e2 e3 e4 e5');
    expect(within('2026-05-05', null)).toBe('e4 e5');
  });

  test('have one under way among them up to now, and nothing after', () => {
    expect(within('2026-05-07', null)).toBe('e5');
    expect(within('2026-05-20', null)).toBe('e5');
    expect(within('2026-05-21', null)).toBe('');
  });

  test('leave out those that began on a day after the other', () => {
    expect(within(null, '2026-04-30')).toBe('');
    expect(within(null, '2026-05-03')).toBe('e1 e2 e3');
    expect(within('2026-05-05', '2026-05-07')).toBe('e4');
  });
});

describe('an outing that a doing cuts in two', () => {
  /** Whether its three hours count after a doing at 09:00. */
  const counts = (on: string, outing: object): string =>
    ask(
      'task t "Task" every 3 h of work',
      history([on, { kind: 'outing', hours: 3, ...outing }], ['2026-05-11 09:00', done('t')]),
      '2026-05-20',
    ).stands();

  test('counts in proportion where the minutes are known', () => {
    expect(counts('2026-05-11 09:00', { until: '12:00' })).toBe('due 3 h');
    expect(counts('2026-05-11 08:00', { hours: 4, until: '12:00' })).toBe('due 3 h');
    expect(counts('2026-05-11 08:00', { hours: 3.98, until: '12:00' })).toBe('coming-up 3 h');
    expect(counts('2026-05-11 08:00', { until: '12:00' })).toBe('clear 3 h');
    expect(counts('2026-05-11 06:00', { until: '09:00' })).toBe('clear 3 h');
  });

  test('counts as a whole where they do not tell and it ended on a later day', () => {
    expect(counts('2026-05-10', { untilOn: '2026-05-12', until: '10:00' })).toBe('due 3 h');
    expect(counts('2026-05-11 08:00', { untilOn: '2026-05-12' })).toBe('due 3 h');
  });

  test('does not count where they do not tell and it ended on that day', () => {
    expect(counts('2026-05-10', { untilOn: '2026-05-11', until: '10:00' })).toBe('clear 3 h');
    expect(counts('2026-05-11 08:00', { untilOn: '2026-05-11' })).toBe('clear 3 h');
  });
});

test('of time at work on the beat, only outings with such work are cited', () => {
  const { seen } = ask(
    'duty tall "Tall"\ntask t "Task" every 2 h of work in tall\n  count from due if late',
    history(
      ['2026-05-01', done('t')],
      ['2026-05-02', { kind: 'outing', hours: 3, duties: [{ duty: 'tall' }] }],
      ['2026-05-03', { kind: 'outing', hours: 3 }],
      ['2026-05-04', done('t')],
    ),
    '2026-05-05',
  );
  expect(seen('interval').limit).toMatchObject({ base: { why: 'due-point', entries: ['e1', 'e4', 'e2'] }, left: 36_000 });
});
