/** Tasks that come after another task: what is done counts as what happens (docs/meaning.md §4). */
import { expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import { compileText } from '../support/compile-text.js';
import { done, type Happenings, history, meters, moment } from '../support/history.js';

function look(timing: string, ...happened: Happenings): string {
  const graph = compileText(`meter engine "Hours" counts h\ntask weld "Weld"\n  every 500 h of engine\ntask t "Look at it"\n  ${timing}`);
  const found = assess(graph, history(...happened), moment('2026-05-20')).tasks.find(({ task }) => task === 't');
  const due = found?.due;
  return `${found?.state}${due?.on === 'meter' ? ` ${due.ticks / 36_000} h` : ''}`;
}

const weld = ['2026-05-02', done('weld', { engine: 100 })] as const;

test('at once: due from when the other was done until it is done itself', () => {
  expect(look('on weld')).toBe('clear');
  expect(look('on weld', ['2026-05-02', meters({ engine: 100 })])).toBe('clear');
  expect(look('on weld', weld)).toBe('due');
  expect(look('on weld', weld, ['2026-05-04', done('t')])).toBe('clear');
  expect(look('on weld', ['2026-05-01', done('t')], weld)).toBe('due');
});

test('within so many hours: from what the meter showed when the other was done', () => {
  const within = (...happened: Happenings): string => look('within 5 h of engine after weld', ...happened);
  expect(within(weld, ['2026-05-09', meters({ engine: 101 })])).toBe('clear 105 h');
  expect(within(weld, ['2026-05-09', meters({ engine: 106 })])).toBe('overdue 105 h');
  expect(within(weld, ['2026-05-09', done('t', { engine: 103 })])).toBe('clear');
  expect(within(['2026-05-02', done('weld')])).toBe('unknown');
});

test('at fixed points: counted from then', () => {
  const series = (...happened: Happenings): string => look('at 1 h, 10 h of engine after weld', ...happened);
  expect(series(weld, ['2026-05-09', meters({ engine: 100.5 })])).toBe('clear 101 h');
  expect(series(weld, ['2026-05-03', done('t', { engine: 101 })], ['2026-05-09', meters({ engine: 105 })])).toBe('clear 110 h');
});
