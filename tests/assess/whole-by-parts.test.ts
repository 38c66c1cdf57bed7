/** Tasks that are `met by` others (docs/meaning.md §3): what one entry names was done at once. */
import { describe, expect, test } from 'vitest';
import { worldOf } from '../../src/assess/assess.js';
import { realDoings } from '../../src/assess/doings.js';
import { withWholes } from '../../src/assess/whole-by-parts.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { compileText } from '../support/compile-text.js';
import { ask } from '../support/ask.js';
import { done, type Happenings, history, moment } from '../support/history.js';

const tasks = `task t "Whole service" every 30 days met by left, right
task left "Left half" every 30 days
task right "Right half" every 30 days
task twice "After two" when t done 2 times within 60 days`;
const stands = (task: string, ...happened: Happenings): string => ask(tasks, history(...happened), '2026-05-20').stands(task);

test('the whole is done once both halves are, and each counts once', () => {
  expect(stands('t', ['2026-05-01', done('left')])).toBe('unrecorded');
  expect(stands('t', ['2026-05-01', done('left')], ['2026-05-05', done('right')])).toBe('clear 2026-06-04');
  expect(stands('t', ['2026-05-01', done(['left', 'right'])])).toBe('clear 2026-05-31');
  expect(stands('t', ['2026-05-01', done('left')], ['2026-05-05', done('right')], ['2026-05-06', done('left')])).toBe('clear 2026-06-04');
});

test('a half that was done with the whole does not count towards the next time, whichever entry it is of', () => {
  const together = (day: string) => [day, done(['t', 'left'])] as const;
  expect(stands('t', together('2026-05-01'), ['2026-05-05', done('right')])).toBe('clear 2026-05-31');
  expect(stands('t', ['2026-04-01', done('right')], ['2026-04-20', done('t')], together('2026-05-01'), ['2026-05-05', done('right')])).toBe(
    'clear 2026-05-31',
  );
});

test('an entry that names the whole and the half that was lacking says once that the whole was done', () => {
  const lacking = ['2026-05-01', done('right')] as const;
  expect(stands('twice', lacking, ['2026-05-02', done(['t', 'left'])])).toBe('clear');
  expect(stands('twice', lacking, ['2026-05-02', done('left')], ['2026-05-03', done('t')])).toBe('due 2026-05-03');
});

describe('a record that cites the doing of a half for something else', () => {
  const graph = compileText(tasks);
  const task = graph.tasks.find(({ id }) => id === 't');
  const trigger = task?.trigger ?? -1;
  /** What the rule of the whole cites in the end, where it cites `own` itself and another rule cites `other`. */
  const cited = (happened: Happenings, own: readonly string[], other: readonly string[]): readonly (readonly string[])[] => {
    const now = moment('2026-05-20');
    const world = worldOf(graph, readTimeline(history(...happened), graph, now), now, {});
    realDoings(world, 't');
    if (task === undefined) throw new Error('there is no such task');
    const record = [
      { node: trigger, entries: own },
      { node: trigger + 1, entries: other },
    ];
    return withWholes(world, task, record).map(({ entries }) => entries);
  };

  test('cites with the rule of the whole, and with no other, when the whole was done since', () => {
    const happened: Happenings = [
      ['2026-04-30', done('t')],
      ['2026-05-01', done('left')],
      ['2026-05-01', done('t')],
      ['2026-05-06', done('t')],
    ];
    expect(cited(happened, ['e4'], ['e2'])).toEqual([['e4', 'e3'], ['e2']]);
    expect(cited(happened, ['e4'], ['e9'])).toEqual([['e4'], ['e9']]);
  });

  test('of a half that is stated without a day it may be any time; of a whole that is so stated, none since', () => {
    const stated = (what: string) => ['2026-05-01', { kind: 'stated', task: what }] as const;
    expect(cited([stated('left'), ['2026-05-02', done('t')], stated('t')], ['e2'], ['e1'])).toEqual([['e2', 'e3'], ['e1']]);
    expect(cited([['2026-05-01', done('left')], ['2026-05-02', done('t')], stated('t')], [], ['e1'])).toEqual([['e2'], ['e1']]);
  });
});
