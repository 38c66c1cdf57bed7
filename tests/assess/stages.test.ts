/** Services at fixed points after an event (docs/meaning.md §4, "First and staged"), with and without anything read at the event. */
import { describe, expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import { compileText } from '../support/compile-text.js';
import { ask } from '../support/ask.js';
import { done, type Happenings, history, meters, moment } from '../support/history.js';

const REFIT = { kind: 'event', event: 'refit' } as const;

/** State and due point, in hours, of a task that is timed so. */
function look(timing: string, ...happened: Happenings): string {
  const graph = compileText(`meter engine "Hours" counts h\nevent refit "Refitted"\ntask t "Task"\n  ${timing}`);
  const found = assess(graph, history(...happened), moment('2026-05-20')).tasks.find(({ task }) => task === 't');
  const due = found?.due;
  return `${found?.state}${due?.on === 'meter' ? ` ${due.ticks / 36_000} h` : ''}`;
}

/** The same, with its record. */
function looked(timing: string, ...happened: Happenings) {
  const machine = 'meter engine "Hours" counts h\nevent refit "Refitted"\n';
  return ask(`${machine}task t "Task"\n  ${timing}`, history(...happened), '2026-05-20');
}

describe('a single point after an event', () => {
  const single = (...happened: Happenings): string => look('at 20 h of engine after refit', ...happened);
  const refit = ['2026-05-02', REFIT] as const;

  test('is not asked for before the event', () => {
    expect(single()).toBe('clear');
    expect(single(['2026-05-01', done('t', { engine: 5 })])).toBe('clear');
  });

  test('is met by any doing after the event, even where nobody read the meter', () => {
    expect(single(refit)).toBe('unknown');
    expect(single(refit, ['2026-05-03', done('t')])).toBe('clear');
    expect(single(['2026-05-01', done('t')], refit)).toBe('unknown');
    // On the day of the event itself it may have been done before.
    expect(single(refit, ['2026-05-02', done('t')])).toBe('unknown');
    expect(single(['2026-05-02 09:00', REFIT], ['2026-05-02 10:00', done('t')])).toBe('clear');
  });

  test('counts from what the meter showed at the event', () => {
    const read = ['2026-05-01', meters({ engine: 100 })] as const;
    expect(single(read, refit, ['2026-05-09', meters({ engine: 110 })])).toBe('clear 120 h');
    expect(single(read, refit, ['2026-05-09', meters({ engine: 121 })])).toBe('overdue 120 h');
    expect(single(read, refit, ['2026-05-03', done('t', { engine: 101 })], ['2026-05-09', meters({ engine: 121 })])).toBe('clear');
    expect(single(read, ['2026-05-01', done('t', { engine: 100 })], refit, ['2026-05-09', meters({ engine: 121 })])).toBe('overdue 120 h');
  });

  test('of two events counts from the later one', () => {
    const twice = [refit, ['2026-05-03', done('t', { engine: 101 })], ['2026-05-10', REFIT]] as const;
    expect(single(['2026-05-01', meters({ engine: 100 })], ...twice, ['2026-05-12', meters({ engine: 115 })])).toBe('clear 121 h');
  });
});

describe('several points after an event', () => {
  const several = (...happened: Happenings): string => look('at 1 h, 10 h, 50 h of engine after refit', ...happened);
  const start = [
    ['2026-05-02', meters({ engine: 100 })],
    ['2026-05-02', REFIT],
  ] as const;

  test('are met in turn: by what was done, where it was done', () => {
    expect(several(...start, ['2026-05-03', meters({ engine: 100.5 })])).toBe('clear 101 h');
    expect(several(...start, ['2026-05-03', done('t', { engine: 100.5 })])).toBe('clear 110 h');
    expect(several(...start, ['2026-05-03', done('t', { engine: 111 })])).toBe('clear 150 h');
    expect(several(...start, ['2026-05-10', done('t', { engine: 151 })])).toBe('clear');
    expect(several(...start, ['2026-05-03', done('t', { engine: 101 })], ['2026-05-04', done('t', { engine: 111 })])).toBe('clear 150 h');
  });

  test('stay met, whatever is stated later without hours', () => {
    const stated = ['2026-05-19', { kind: 'stated', task: 't', doneBy: '2026-05-18' }] as const;
    expect(several(...start, ['2026-05-03', done('t', { engine: 111 })], stated)).toBe('clear 150 h');
    expect(several(...start, stated)).toBe('clear 110 h');
  });

  test('on the day of the event itself are not met without hours that say so', () => {
    expect(several(...start, ['2026-05-02', done('t', { engine: 100 })])).toBe('clear 101 h');
  });

  test('are unknown where nobody read the meter at the event, whatever was done since', () => {
    expect(several(['2026-05-02', REFIT], ['2026-05-03', done('t')])).toBe('unknown');
  });
});

describe('first services of a new machine', () => {
  const first = (...happened: Happenings): string => look('first at 10 h, 30 h of engine\n  every 100 h of engine', ...happened);

  test('are met in turn; a doing that nobody read hours at meets the first', () => {
    const isNew = ['2026-01-01', { kind: 'machine', inService: '2026-01-01' }] as const;
    expect(first(isNew, ['2026-05-03', meters({ engine: 15 })])).toBe('overdue 10 h');
    expect(first(isNew, ['2026-02-01', done('t')], ['2026-05-03', meters({ engine: 15 })])).toBe('clear 30 h');
    expect(first(isNew, ['2026-02-01', done('t', { engine: 30 })], ['2026-05-03', meters({ engine: 35 })])).toBe('clear 130 h');
  });
});

describe('a first service after an event', () => {
  const first = (...happened: Happenings): string => look('first at 20 h of engine after refit\n  every 100 h of engine', ...happened);
  const doneOnce = ['2026-05-01', done('t', { engine: 90 })] as const;

  test('comes before the interval again until it is met', () => {
    expect(first(doneOnce, ['2026-05-03', meters({ engine: 100 })])).toBe('clear 190 h');
    expect(first(doneOnce, ['2026-05-03', meters({ engine: 100 })], ['2026-05-03', REFIT])).toBe('clear 120 h');
    expect(
      first(doneOnce, ['2026-05-03', meters({ engine: 100 })], ['2026-05-03', REFIT], ['2026-05-04', done('t', { engine: 105 })]),
    ).toBe('clear 205 h');
  });
});

describe('a first service after an event, then by the calendar', () => {
  const timing = 'first at 20 h of engine after refit\n  every 12 months';
  const refit = ['2026-05-02', REFIT] as const;

  test('is unknown while nobody can say whether it was done after the event, and met by what was', () => {
    expect(look(timing, refit, ['2026-05-02', done('t')])).toBe('unknown');
    expect(looked(timing, refit, ['2026-05-03', done('t')]).stands()).toBe('clear 2027-05-03');
  });

  test('in two ways is met once both are, each by its own', () => {
    const either = 'first at 20 h of engine or 1 month, whichever first after refit\n  every 100 h of engine';
    const start = ['2026-05-02', { ...REFIT, meters: { engine: 100 } }] as const;
    // Of one day without minutes: by its hours it came after, by the calendar nobody can say.
    expect(looked(either, start, ['2026-05-02', done('t', { engine: 121 })]).stands()).toBe('clear 2026-06-02');
    expect(looked(either, start, ['2026-05-03', done('t', { engine: 121 })]).stands()).toBe('clear 221 h');
  });
});

test('once a first service is met, the interval follows the doings alone: the beat does not count from the start', () => {
  const timing = 'first at 20 h of engine\n  every 100 h of engine\n  count from due if late';
  const isNew = ['2026-01-01', { kind: 'machine', inService: '2026-01-01' }] as const;
  expect(look(timing, isNew, ['2026-05-03', done('t', { engine: 120 })])).toBe('clear 220 h');
});

describe('what a series shows', () => {
  const at = (when: string) => ({ on: 'moment', at: moment(when) });
  const hours = (value: number) => ({ on: 'meter', meter: 'engine', ticks: value * 36_000 });
  const single = (...happened: Happenings) => looked('at 20 h of engine after refit', ...happened).seen('stages');
  const refit = ['2026-05-02', { ...REFIT, meters: { engine: 100 } }] as const;

  test('met: the event as well as the doing, with where both stood', () => {
    expect(single(refit, ['2026-05-05', done('t', { engine: 121 })])).toMatchObject({
      state: 'clear',
      entries: ['e1', 'e2'],
      stood: [at('2026-05-02'), at('2026-05-05'), hours(100), hours(121)],
    });
  });

  test('met by what is stated without hours: where that stood nobody knows', () => {
    expect(single(refit, ['2026-05-06', { kind: 'stated', task: 't', doneBy: '2026-05-05' }])).toMatchObject({
      state: 'clear',
      entries: ['e1', 'e2'],
      stood: [at('2026-05-02'), at('2026-05-05'), hours(100)],
    });
  });

  test('met though nobody read the meter at the event: both, and when they were', () => {
    expect(single(['2026-05-02', REFIT], ['2026-05-05', done('t')])).toMatchObject({
      state: 'clear',
      entries: ['e1', 'e2'],
      stood: [at('2026-05-02'), at('2026-05-05')],
    });
  });

  test('of time at work: all that is on record, from no day, where nobody said when the machine entered service', () => {
    const work = ask(
      'task t "Task" first at 2 h of work\n  every 10 h of work',
      history(['2026-05-02', { kind: 'outing', hours: 1 }]),
      '2026-05-20',
    );
    expect(work.stands()).toBe('clear 2 h');
    expect(work.seen('stages').limit).toMatchObject({ base: { why: 'start', when: null, entries: [] }, left: 36_000 });
  });

  test('not met: nothing of a doing that meets no stage', () => {
    const several = looked('at 10 h, 50 h of engine after refit', refit, ['2026-05-02', done('t', { engine: 101 })]).seen('stages');
    expect(several.limit?.base?.entries).toEqual(['e1']);
    expect(several.stood).toBeUndefined();
  });
});

test('points on several axes, which no schedule has, are a fault of whoever made the graph', () => {
  const graph = compileText('meter engine "Hours" counts h\ntask t "Task" first at 20 h of engine\ntask u "Other" every 20 days');
  const days = graph.nodes.find(({ kind }) => kind === 'interval');
  const amount = days?.kind === 'interval' ? [days.amount] : [];
  const nodes = graph.nodes.map((node) => (node.kind === 'stages' ? { ...node, amounts: [...node.amounts, ...amount] } : node));
  expect(() => assess({ ...graph, nodes }, [], moment('2026-05-20'))).toThrow(/stages on several axes/);
});
