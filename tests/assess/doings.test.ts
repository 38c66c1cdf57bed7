/** Which doing counts as the last (docs/meaning.md §1, §3): the order of doings, and what a statement without a day says. */
import { describe, expect, test } from 'vitest';
import { worldOf } from '../../src/assess/assess.js';
import { doingsOf, realDoings } from '../../src/assess/doings.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { compileText } from '../support/compile-text.js';
import { ask } from '../support/ask.js';
import { done, type Happenings, history, moment } from '../support/history.js';

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

test('what one entry names was done once, though one of the tasks covers the other', () => {
  const tasks =
    'task t "After two" when look done 2 times within 30 days\ntask look "Look" every 1 year\ntask big "Service" every 1 year covers look';
  expect(state(tasks, '2026-05-11', [['2026-05-10', done(['look', 'big'])]])).toBe('clear');
  expect(
    state(tasks, '2026-05-11', [
      ['2026-05-09', done('big')],
      ['2026-05-10', done('look')],
    ]),
  ).toBe('due 2026-05-10');
});

describe('the doings of a task', () => {
  const happened = history(['2026-05-01', done('t')], ['2026-05-02', done('t')]);
  const worldFor = (graph: RuleGraph) => worldOf(graph, readTimeline(happened, graph, moment('2026-05-10')), moment('2026-05-10'), {});

  test('are worked out once', () => {
    const world = worldFor(compileText('task t "Task" every 10 days'));
    const [first, steps] = [doingsOf(world, 't'), world.steps];
    expect(first).toHaveLength(2);
    expect(doingsOf(world, 't')).toBe(first);
    expect(realDoings(world, 't')).toHaveLength(2);
    expect(world.steps).toBe(steps);
  });

  test('come to an end where a graph that no schedule makes has a task that is met by itself', () => {
    const graph = compileText('task t "Task" every 10 days met by a, b\ntask a "A" every 1 year\ntask b "B" every 1 year');
    const [task, a, b] = graph.tasks;
    if (task === undefined || a === undefined || b === undefined) throw new Error('three tasks were meant');
    const circle = { ...graph, tasks: [task, { ...a, metBy: ['t', 'b'] }, b] };
    expect(realDoings(worldFor(circle), 't')).toHaveLength(2);
  });
});

describe('what was done at no stated day', () => {
  const stated = ['2026-05-01', { kind: 'stated', task: 't' }] as const;

  test('comes before every record: it answers nothing that is on it', () => {
    expect(state('task t "Task" on refuelling', '2026-05-11', [stated, ['2026-04-01', { kind: 'refuelled' }]])).toBe('due 2026-04-01');
    expect(state('task t "Task" within 2 h before each outing', '2026-05-11 08:00', [stated], { outing: {} })).toBe('due 2026-05-11 08:00');
  });

  test('leaves time at work unknown from then on, and says nothing of hours after an event', () => {
    expect(state('task t "Task" every 3 h of work', '2026-05-11', [stated, ['2026-05-02', { kind: 'outing', hours: 1 }]])).toBe('unknown');
    const series = 'meter engine "Hours" counts h\nevent refit "Refitted"\ntask t "Task" at 20 h of engine after refit';
    const refit = ['2026-05-02', { kind: 'event', event: 'refit', meters: { engine: 100 } }] as const;
    const reading = ['2026-05-12', { kind: 'reading', meters: { engine: 160 } }] as const;
    const at = (more: object) => ['2026-05-01', { kind: 'stated', task: 't', doneAt: { engine: 150 }, ...more }] as const;
    expect(state(series, '2026-05-12', [refit, reading, at({})])).toBe('overdue 120 h');
    expect(state(series, '2026-05-12', [refit, reading, at({ doneBy: '2026-05-11' })])).toBe('clear');
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
