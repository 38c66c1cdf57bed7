import { describe, expect, test } from 'vitest';
import { compareEditions } from '../../src/compare/compare-editions.js';
import { compileText } from '../support/compile-text.js';
import { done, history, meters, moment } from '../support/history.js';

const machine =
  'meter engine "Hour meter" counts h\nduty dusty "Dust"\ngauge coolant "Gauge" reads °C\n  high above 97\ntask clean "Clean" every 1 day\n';

function bearings(before: string, after: string): readonly string[] {
  const comparison = compareEditions(compileText(`${machine}task t "Task" ${before}`), compileText(`${machine}task t "Task" ${after}`));
  return comparison.tasks.flatMap((task) => task.changes.map((change) => `${change.what}: ${change.bearing}`));
}

describe('a task of two editions', () => {
  test.each([
    ['every 100 h of engine', 'every 80 h of engine', ['interval: tighter']],
    ['every 100 h of engine', 'every 120 h of engine', ['interval: looser']],
    ['every 100 h of engine or 12 months, whichever first', 'every 100 h of engine', ['timing: looser']],
    ['every 100 h of engine', 'every 100 h of engine or 12 months, whichever first', ['timing: tighter']],
    ['every 100 h of engine or 12 months, whichever last', 'every 100 h of engine', ['timing: tighter']],
    ['every 100 h of engine or 12 months, whichever first', 'every 100 h of engine or 12 months, whichever last', ['timing: looser']],
    ['every 12 months', 'every 26 weeks', ['interval: tighter']],
    ['every 100 h of engine allow 10 h late', 'every 100 h of engine allow 5 h late', ['late allowance: tighter']],
    ['every 100 h of engine', 'every 100 h of engine count from due if late', ['counting: re-anchored']],
    ['every 100 h of engine', 'every 100 h of engine in dusty every 50 h', ['interval: tighter']],
    ['every 100 h of engine', 'every 100 h of engine only if coolant above 97 °C', ['gate: looser']],
    ['every 100 h of engine', 'every 100 h of engine warning "Hot."', ['cautions: different']],
    ['every 100 h of engine', 'every 100 h of engine hold 20 h late "Stop."', ['hard stop: tighter']],
    ['after 3 times clean', 'after 2 times clean', ['interval: tighter']],
    ['on clean', 'after 2 times clean', ['interval: looser']],
    ["before each day's work", 'before each outing', ['timing: looser', 'timing: tighter']],
  ])('%s → %s', (before, after, expected) => expect(bearings(before, after)).toEqual(expected));

  test('layout, comments and the order of declarations change nothing', () => {
    const a = compileText(`${machine}task t "Task" every 100 h of engine\ntask u "Other" every 1 year`);
    const b = compileText(`${machine}# moved\ntask u "Other"\n  every 1 year\ntask t "Task"\n\n  every 100 h of engine`);
    const comparison = compareEditions(a, b);
    expect([comparison.same, comparison.tasks, comparison.declarations]).toEqual([true, [], []]);
  });
});

test('new and gone tasks, and declarations that changed', () => {
  const comparison = compareEditions(
    compileText(`${machine}task t "Task" every 1 year`),
    compileText(`${machine.replace('above 97', 'above 99')}task u "Other" every 1 year`),
  );
  expect(comparison.tasks.map((task) => `${task.task} ${task.status}`)).toEqual(['u new', 't gone']);
  expect(comparison.declarations).toEqual([{ kind: 'gauges', id: 'coolant', status: 'changed' }]);
});

test('which due points of a machine move, by how much and why', () => {
  const before = compileText(`${machine}task t "Task" every 100 h of engine\ntask u "Same" every 1 year`);
  const after = compileText(`${machine}task t "Task" every 80 h of engine\ntask u "Same" every 1 year`);
  const entries = history(['2026-01-01', done(['t', 'u'], { engine: 1200 })], ['2026-03-01', meters({ engine: 1285 })]);
  const [move, ...more] = compareEditions(before, after, [{ name: 'no. 7', entries }], moment('2026-03-02')).moves;
  expect(more).toEqual([]);
  expect([move?.machine, move?.task, move?.before.state, move?.after.state, move?.by]).toEqual([
    'no. 7',
    't',
    'clear',
    'overdue',
    -20 * 36000,
  ]);
  expect(move?.why[0]?.bearing).toBe('tighter');
});
