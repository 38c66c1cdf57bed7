/** Tasks that are `met by` others (docs/meaning.md §3): what one entry names was done at once. */
import { expect, test } from 'vitest';
import { ask } from '../support/ask.js';
import { done, type Happenings, history } from '../support/history.js';

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
