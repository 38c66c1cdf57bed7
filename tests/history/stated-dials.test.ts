/** On which dial a statement's hours stood (docs/meaning.md §2, §3), and what put that dial there. */
import { expect, test } from 'vitest';
import { readTimeline } from '../../src/history/read-timeline.js';
import { compileText } from '../support/compile-text.js';
import { type Happenings, history, meters, moment } from '../support/history.js';

const graph = compileText('meter engine "Hours" counts h\ntask t "Task" every 100 h of engine');
const replaced = (final: number) => ['2026-05-02', { kind: 'meter-replaced', meter: 'engine', final, initial: 0 }] as const;
const stated = ['2026-05-09', { kind: 'stated', task: 't', doneBy: '2026-05-08', doneAt: { engine: 5 } }] as const;

/** The hours of the statement as a life total, and what its dial rests on. */
function told(...happened: Happenings) {
  const { statements } = readTimeline(history(...happened), graph, moment('2026-05-20'));
  const [statement] = statements.get('t') ?? [];
  return [(statement?.doneAt.get('engine') ?? 0) / 36_000, statement?.dials.get('engine')];
}

test('a replacement whose final value counts shows the new dial by itself', () => {
  expect(told(['2026-05-01', meters({ engine: 100 })], replaced(110), ['2026-05-05', meters({ engine: 3 })], stated)).toEqual([
    115,
    ['e2'],
  ]);
});

test('one whose final value is not believed takes the next reading to show it, and the last before to say from where it goes on', () => {
  expect(told(['2026-05-01', meters({ engine: 100 })], replaced(90), ['2026-05-05', meters({ engine: 3 })], stated)).toEqual([
    105,
    ['e3', 'e1', 'e2'],
  ]);
});

test('the first dial of a machine shifts nothing', () => {
  expect(told(['2026-05-01', meters({ engine: 3 })], stated)).toEqual([5, undefined]);
});
