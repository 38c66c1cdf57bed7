/** docs/meaning.md at its edges: bounds that are or are not included, the last so many of more, what one reading settles and another does not. */
import { describe, expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import type { AssessOptions, Assessment } from '../../src/assess/assessment.js';
import type { Entry } from '../../src/history/entry.js';
import { compileText } from '../support/compile-text.js';
import { done, history, meters, moment, reads } from '../support/history.js';

const machine = `meter engine "Hour meter" counts h
gauge coolant "Coolant temperature gauge" reads °C
  normal 75 to 90
gauge bearing "Bearing temperature gauge" reads °C
event wash "The machine was washed"
`;

function run(declarations: string, entries: readonly Entry[], now: string, options: AssessOptions = {}): Assessment {
  return assess(compileText(machine + declarations), entries, moment(now), options);
}

function stateOf(assessment: Assessment, task = 't'): string | undefined {
  return assessment.tasks.find((each) => each.task === task)?.state;
}

test('an assessment says what it is, and of which schedule', () => {
  const graph = compileText(`${machine}task t "Task" every 10 h of engine`);
  const { format, version, schedule } = assess(graph, [], moment('2026-05-11'));
  expect([format, version, schedule]).toEqual(['duewright-assessment', 1, { name: 'test-machine', fingerprint: graph.fingerprint }]);
});

describe('the last so many times', () => {
  const twice = 'task t "Task"\nwhen look done 2 times within 30 days\ntask look "Look" every 1 year';
  const looked = (...days: readonly string[]): readonly Entry[] => history(...days.map((day) => [day, done('look')] as const));

  test('are the last two of three: the first may lie far back', () => {
    expect(stateOf(run(twice, looked('2026-01-01', '2026-05-01', '2026-05-10'), '2026-05-11'))).toBe('due');
    expect(stateOf(run(twice, looked('2026-01-01', '2026-03-01', '2026-05-10'), '2026-05-11'))).toBe('clear');
  });

  test('are none where it was done fewer times', () => {
    expect(stateOf(run(twice, looked('2026-05-10'), '2026-05-11'))).toBe('clear');
  });

  test('of an event as well', () => {
    const washed = 'task t "Task"\nwhen wash happened 2 times within 30 days';
    const on = (...days: readonly string[]): readonly Entry[] =>
      history(...days.map((day) => [day, { kind: 'event', event: 'wash' }] as const));
    expect(stateOf(run(washed, on('2026-01-01', '2026-05-01', '2026-05-10'), '2026-05-11'))).toBe('due');
    expect(stateOf(run(washed, on('2026-05-10'), '2026-05-11'))).toBe('clear');
  });
});

describe('what a stop cannot tell', () => {
  const stop = 'stop hot "Too hot" when coolant above 97 °C or bearing above 90 °C\n';
  const both = 'task read-both "Read both" every 10 days\n  reads coolant\n  reads bearing\n';

  test('is settled by a due task that reads all of it, not by one that reads a part', () => {
    const one = 'task read-one "Read one" every 10 days\n  reads coolant\n';
    const done10 = (task: string): readonly Entry[] => history(['2026-05-01', done(task)]);
    expect(run(stop + one, done10('read-one'), '2026-05-11').verdict).toBe('cannot-tell');
    expect(run(stop + both, done10('read-both'), '2026-05-11').verdict).toBe('work-due-first');
    expect(run(stop + both, done10('read-both'), '2026-05-10').verdict).toBe('cannot-tell');
  });

  test('is not settled where more than a reading is missing', () => {
    const older = 'stop old "Too old, or too hot" when coolant above 97 °C or machine older than 5 years\n';
    expect(run(older + both, history(['2026-05-01', done('read-both')]), '2026-05-11').verdict).toBe('cannot-tell');
  });
});

describe('a task that is late by hours nobody has read', () => {
  // The months say that it is due; how far past 100 h it is, and so whether it holds the machine, nobody can tell without a reading.
  const late = 'task t "Task" every 100 h of engine or 6 months, whichever first hold 20 h late "Do not run it on."';
  const once = history(['2026-01-01', done('t')]);

  test('does not leave it open whether the machine may be used: it is due first', () => {
    expect(stateOf(run(late, once, '2026-07-02'))).toMatch(/^(over)?due$/);
    expect(run(late, once, '2026-07-02').verdict).toBe('work-due-first');
    expect(run(late, once, '2026-05-01').verdict).toBe('cannot-tell');
  });
});

describe('a meter above a reading', () => {
  const over = (words: string): string => `task t "Task"\nwhen engine ${words}`;
  const read = history(
    ['2026-05-01', meters({ engine: 100 })],
    ['2026-05-04', meters({ engine: 101 })],
    ['2026-05-07', meters({ engine: 102 })],
  );

  test('counts from the first reading past it; at least, from the one that reaches it', () => {
    const since = (words: string): unknown => run(over(words), read, '2026-05-08').tasks[0]?.due;
    expect(since('above 100 h')).toEqual({ on: 'moment', at: { day: moment('2026-05-04').day, minute: null } });
    expect(since('at least 100 h')).toEqual({ on: 'moment', at: { day: moment('2026-05-01').day, minute: null } });
  });
});

describe('a season', () => {
  test('has its first and its last day in it, also over the new year', () => {
    const on = (season: string, ...days: readonly string[]): readonly unknown[] =>
      days.map((day) => stateOf(run(`task t "Task"\nwhen date from ${season}`, history(['2026-01-01', reads({ coolant: 80 })]), day)));
    expect(on('1 April to 30 September', '2026-03-31', '2026-04-01', '2026-09-30', '2026-10-01')).toEqual(['clear', 'due', 'due', 'clear']);
    expect(on('15 November to 10 February', '2026-11-14', '2026-11-15', '2026-02-10', '2026-02-11')).toEqual([
      'clear',
      'due',
      'due',
      'clear',
    ]);
  });
});

describe('of two limits that are both past', () => {
  const task = 'task t "Task" every 100 h of engine or 2 months, whichever first';
  const governing = (entries: readonly Entry[], now: string): string | undefined => {
    const graph = compileText(machine + task);
    const node = assess(graph, entries, moment(now)).tasks[0]?.governing;
    return node === null || node === undefined
      ? undefined
      : graph.nodes[node]?.kind === 'interval'
        ? graph.nodes[node].origin.text
        : undefined;
  };

  test('that decides which was reached first, by an hour if need be, however much of the other is used up', () => {
    const begun = ['2026-01-01', done('t', { engine: 0 })] as const;
    // Two months are over on 1 March. 101 % and 180 % are used up in the end.
    expect(
      governing(history(begun, ['2026-02-28 23:00', meters({ engine: 100 })], ['2026-04-01', meters({ engine: 101 })]), '2026-04-20'),
    ).toContain('100 h');
    expect(governing(history(begun, ['2026-03-01 23:00', meters({ engine: 400 })]), '2026-04-20')).toContain('2 months');
  });
});

describe('a series after an event', () => {
  const task = 'task t "Task" at 50 h, 200 h of engine after wash';
  const washed = ['2026-01-01', { kind: 'event', event: 'wash', meters: { engine: 0 } }] as const;

  test('is due at the latest stage that is reached, from the very hour on', () => {
    const dueAt = (hours: number): unknown =>
      run(task, history(washed, ['2026-02-01', meters({ engine: hours })]), '2026-02-01').tasks[0]?.due;
    const [before, at] = [dueAt(199.9), dueAt(200)];
    expect(before).toMatchObject({ on: 'meter' });
    expect(JSON.stringify(before)).not.toBe(JSON.stringify(at));
  });
});
