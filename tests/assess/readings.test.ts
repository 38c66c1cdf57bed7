/** Readings (docs/meaning.md §2, §6): where the meter stood at one, and what a total rests on. */
import { expect, test } from 'vitest';
import { ask } from '../support/ask.js';
import { done, history, meters } from '../support/history.js';

const machine = `meter engine "Hours" counts h
gauge coolant "Coolant" reads °C
dipstick oil "Oil" low to full is 2 L
`;

test('what a reading asks for within hours counts from those that its own entry notes, whatever else was read on that day', () => {
  const tasks = `task look "Look at the oil" every 10 days
  reads oil
    below low caution "Low." then t within 10 h of engine
    low to full fine
    above full fine
task t "Find the leak" every 1 year`;
  const low = ['2026-05-02', { kind: 'reading', readings: { oil: 'below-low' }, meters: { engine: 100 } }] as const;
  const late = ['2026-05-02', meters({ engine: 105 })] as const;
  expect(ask(machine + tasks, history(['2026-01-01', done('t')], low, late), '2026-05-03').stands()).toBe('clear 110 h');
});

test('a total rests on the dial that was replaced, and a reading of a gauge on itself alone', () => {
  const tasks = 'task t "Task" when engine above 1000 h\ntask hot "Hot" when coolant above 90 °C';
  const entries = history(
    ['2026-05-01', meters({ engine: 1005 })],
    ['2026-05-02', { kind: 'meter-replaced', meter: 'engine', final: 1010, initial: 0 }],
    ['2026-05-03', { kind: 'reading', meters: { engine: 3 }, readings: { coolant: 95 } }],
  );
  const { seen } = ask(machine + tasks, entries, '2026-05-04');
  expect(seen('compare').entries).toEqual(['e3', 'e2', 'e1']);
  expect(seen('compare', 'hot').entries).toEqual(['e3']);
});
