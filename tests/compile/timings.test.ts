/** Timings of the calendar and before work, as nodes: worked from docs/meaning.md §4 by hand. */
import { describe, expect, test } from 'vitest';
import type { Node, RuleGraph } from '../../src/graph/rule-graph.js';
import { compileText } from '../support/compile-text.js';
import { moment } from '../support/history.js';

function compiled(...clauses: readonly string[]): RuleGraph {
  return compileText(['meter engine "Hours" counts h', `task t "Task"\n  ${clauses.join('\n  ')}`].join('\n'));
}

/** The node that times task `t`, without where it was written. */
function timing(...clauses: readonly string[]): object {
  const graph = compiled(...clauses);
  const node = graph.nodes[graph.tasks.find(({ id }) => id === 't')?.trigger ?? -1];
  const { id: _id, origin: _origin, ...rest } = node as Node;
  return rest;
}

describe('days of the week', () => {
  test('are marks of every month, in order, a week apart for margins', () => {
    expect(timing('every Thursday and Monday', 'allow 1 day late')).toMatchObject({
      kind: 'calendar-marks',
      months: 1,
      days: [],
      weekdays: [1, 4],
      skip: false,
      late: { size: 1 },
    });
    // A tenth of seven days, rounded down.
    expect(timing('every Sunday', 'allow 50 % late')).toMatchObject({ weekdays: [7], late: { size: 3 } });
  });
});

describe('marks by the week', () => {
  test('in every so many weeks have their days in order, once each, and the day from which those count', () => {
    expect(timing('every 2 weeks on Thursday, Monday and Thursday from 2026-03-02')).toMatchObject({
      kind: 'calendar-marks',
      months: 1,
      days: [],
      weekdays: [1, 4],
      weeks: { count: 2, from: moment('2026-03-02').day },
    });
  });

  test('in the month: the second of a day of the week is the first from day 8 on, the fourth from day 22, the last from none', () => {
    expect(timing('every 3 months on the second Thursday, the fourth Friday, the last Monday')).toMatchObject({
      months: 3,
      placed: [{ weekday: 4, day: 8 }, { weekday: 5, day: 22 }, { weekday: 1 }],
    });
    expect(timing('every 1 year on the last Sunday of March')).toMatchObject({ months: 12, placed: [{ weekday: 7, month: 3 }] });
  });
});

describe('a period of the calendar', () => {
  test.each([
    ['calendar month', 1, [{ day: 31 }], 0],
    ['calendar quarter', 12, [3, 6, 9, 12].map((month) => ({ day: 31, month })), 2],
    ['calendar half-year', 12, [6, 12].map((month) => ({ day: 31, month })), 5],
    ['calendar year', 12, [{ day: 31, month: 12 }], 11],
  ])('%s: due on its last day, and met from its first on', (period, months, days, whole) => {
    const node = timing(`every ${period}`);
    expect(node).toMatchObject({ kind: 'calendar-marks', months, days, skip: false });
    expect(node).toMatchObject({ early: { calendar: { on: 'calendar', unit: 'calendar-months', count: whole } } });
    expect(node).not.toHaveProperty('doings');
  });

  test('of a week is due on its Sunday, and met from its Monday on', () => {
    const node = timing('every calendar week');
    expect(node).toEqual({
      kind: 'calendar-marks',
      months: 1,
      days: [],
      weekdays: [7],
      skip: false,
      early: { size: 6 },
      late: { size: 0 },
      lead: { size: 0 },
    });
    // Half of seven days, rounded down: and of a month, which counts as 30 for this.
    expect(timing('every calendar week', 'allow 50 % late')).toMatchObject({ late: { size: 3 } });
    expect(timing('every calendar month', 'allow 50 % late')).toMatchObject({ late: { size: 15 } });
  });

  test('may ask for several doings, and so far apart', () => {
    expect(timing('every calendar quarter 3 times')).toMatchObject({ doings: 3, months: 12 });
    expect(timing('every calendar quarter 3 times')).not.toHaveProperty('apart');
    const apart = { on: 'calendar', unit: 'days', count: 20 };
    expect(timing('every calendar quarter 3 times, 20 days apart')).toMatchObject({ doings: 3, apart });
    expect(timing('every 100 h of engine 2 times, 20 days apart')).toMatchObject({ kind: 'interval', doings: 2, apart });
  });

  test('may hold the machine when it is over', () => {
    const hold = { after: { size: 0 }, text: 'Do not run it on.' };
    expect(timing('every calendar year', 'hold when overdue "Do not run it on."')).toMatchObject({ kind: 'calendar-marks', hold });
    expect(timing('every calendar week', 'hold when overdue "Do not run it on."')).toMatchObject({ kind: 'calendar-marks', hold });
    expect(timing('every calendar year')).not.toHaveProperty('hold');
  });
});

test('after so many times is an event with how often, and no margins', () => {
  const graph = compileText('event wash "Washed"\ntask t "Task" after 5 times wash');
  expect(graph.nodes).toMatchObject([
    { kind: 'event', event: 'wash', happenings: 5, early: { size: 0 }, late: { size: 0 }, lead: { size: 0 } },
  ]);
});

describe('storage that does not count', () => {
  test('is any, or of so many days or more', () => {
    expect(timing('every 20 days, not counting storage')).toMatchObject({
      kind: 'interval',
      standstill: { on: 'calendar', unit: 'days', count: 0 },
    });
    expect(timing('every 20 days, not counting storage of 5 days or more')).toMatchObject({ standstill: { unit: 'days', count: 5 } });
    expect(timing('every 20 days')).not.toHaveProperty('standstill');
  });
});

describe('within so long before work', () => {
  test.each([
    ['within 3 h before each shift', 'shift', 180],
    ['within 20 min before each outing', 'outing', 20],
    ["within 20 h before each day's work", 'day', 1200],
  ])('%s', (clause, of, withinMinutes) => {
    expect(timing(clause)).toMatchObject({ kind: 'shortly-before', of, withinMinutes });
  });
});

describe('after a task', () => {
  test('what is done then is an event of its own, once, beside those that are declared', () => {
    const graph = compileText(
      [
        'meter engine "Hours" counts h',
        'event wash "Washed"',
        'task weld "The weld" every 50 h of engine',
        'task look "Look" on weld',
        'task later "Later" within 5 h of engine after weld',
        'task rinse "Rinse" on wash',
      ].join('\n'),
    );
    expect(graph.events.map(({ origin: _, ...event }) => event)).toEqual([
      { id: 'wash', title: 'Washed' },
      { id: 'weld', title: 'The weld', task: 'weld' },
    ]);
    expect(graph.nodes.filter(({ kind }) => kind === 'event')).toMatchObject([{ event: 'weld' }, { event: 'weld' }, { event: 'wash' }]);
  });
});

test('an event of a day that the schedule names has that day, and another has none', () => {
  const events = ['event rule "The rule comes in" on 2026-03-01', 'event wash "Washed"'];
  const graph = compileText([...events, 'task a "A" on rule', 'task b "B" on wash'].join('\n'));
  expect(graph.events.map(({ origin: _, ...event }) => event)).toEqual([
    { id: 'rule', title: 'The rule comes in', on: moment('2026-03-01').day },
    { id: 'wash', title: 'Washed' },
  ]);
});
