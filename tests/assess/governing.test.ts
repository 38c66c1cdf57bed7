/** Of several limits, which governs (docs/meaning.md §4, "Whichever first"), and whether a hard stop among them applies. */
import { describe, expect, test } from 'vitest';
import { ask } from '../support/ask.js';
import { done, history, meters } from '../support/history.js';

const machine = 'meter engine "Engine hours" counts h\nmeter shaft "Shaft hours" counts h\nattachment mower "Mower"\n';
const because = (task: string, entries: ReturnType<typeof history>, now: string, rates: Readonly<Record<string, number>> = {}) =>
  ask(`${machine}task t "Task" ${task}`, entries, now, { rates: new Map(Object.entries(rates)) }).because();

describe('of parts that are due', () => {
  const allowed = 'every 100 h of engine or 2 months, whichever first\n  allow 60 h late, 50 days late';
  const begun = ['2026-01-01', done('t', { engine: 0, shaft: 0 })] as const;

  test('the one that was reached first governs, however much of another is used up', () => {
    const read = history(begun, ['2026-02-28', meters({ engine: 100 })], ['2026-04-01', meters({ engine: 101 })]);
    expect(ask(`${machine}task t "Task" ${allowed}`, read, '2026-04-15').stands()).toBe('due 100 h');
    expect(because(allowed, read, '2026-04-15')).toContain('100 h of engine');
  });

  test.each(['first', 'last'])('whichever %s: of two that the same reading reached, the one that is written first', (which) => {
    const both = history(begun, ['2026-03-01', meters({ engine: 100, shaft: 100 })]);
    expect(because(`every 100 h of engine or 100 h of shaft, whichever ${which}`, both, '2026-03-02')).toContain('of engine');
    expect(because(`every 100 h of shaft or 100 h of engine, whichever ${which}`, both, '2026-03-02')).toContain('of shaft');
  });
});

test('a forecast decides where each part that is measured has one: an occasion that asks for nothing needs none', () => {
  const task = 'every 100 h of engine\n  while mower is on every 30 days\n  before each outing';
  const entries = history(
    ['2026-04-01', { kind: 'attached', attachment: 'mower' }],
    ['2026-05-01', done('t', { engine: 0 })],
    ['2026-05-05', meters({ engine: 10 })],
  );
  // A tenth of the hours is used up, and more of the days; at 50 h a day the hours come first all the same.
  expect(because(task, entries, '2026-05-05')).toContain('30 days');
  expect(because(task, entries, '2026-05-05', { engine: 1_800_000 })).toContain('100 h of engine');
  // Of a meter that stands still no rate of use is known.
  expect(because('every 100 h of engine or 12 months, whichever first', entries, '2026-05-05', { engine: 0 })).toContain('100 h of engine');
});

describe('a hard stop', () => {
  const stopped = (plan: string) =>
    ask(
      `${machine}task t "Task" every ${plan}\n  hold when overdue "Do not run it on."`,
      history(['2026-01-01', done('t', { engine: 0 })], ['2026-02-01', meters({ engine: 150 })]),
      '2026-04-01',
    ).assessment;

  test('that is certain lacks nothing, whatever another part lacks', () => {
    const { verdict, holds } = stopped('100 h of engine or 100 h of shaft, whichever first');
    const shaft = { what: 'meter-at-doing', meter: 'shaft', entry: 'e1' };
    expect(verdict).toBe('held');
    expect(holds.map(({ truth, missing }) => ({ truth, missing }))).toEqual([
      { truth: 'true', missing: [] },
      { truth: 'unknown', missing: [shaft] },
    ]);
  });

  test('of whichever comes last applies once every part is past its own, though a part of a part is unknown', () => {
    expect(stopped('(100 h of engine or 100 h of shaft, whichever first) or 2 months, whichever last').verdict).toBe('held');
    expect(stopped('(100 h of shaft or 2 years, whichever first) or 2 months, whichever last').verdict).toBe('cannot-tell');
  });
});

test('`more than` with something allowed is due beyond the point, and overdue beyond what is allowed', () => {
  const at = (hours: number): string =>
    ask(
      `${machine}task t "Task" every more than 100 h of engine\n  allow 10 h late`,
      history(['2026-01-01', done('t', { engine: 0 })], ['2026-02-01', meters({ engine: hours })]),
      '2026-02-02',
    ).stands();
  expect([100, 100.1, 110, 110.1].map(at)).toEqual(['coming-up 100 h', 'due 100 h', 'due 100 h', 'overdue 100 h']);
});
