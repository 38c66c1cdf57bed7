/** How fast a level falls (docs/meaning.md §6, `sooner`): by which hours, and what it takes to work it out. */
import { expect, test } from 'vitest';
import { ask } from '../support/ask.js';
import { type Happenings, history, meters } from '../support/history.js';

const OIL = 'dipstick oil "Oil" low to full is 2 L\ntask t "Task" sooner at half the time that oil takes to fall to low\n';
const ENGINE = 'meter engine "Hours" counts h\n';
const level = (oil: number | 'full', engine?: number) =>
  ({ kind: 'reading', readings: { oil }, ...(engine === undefined ? {} : { meters: { engine } }) }) as const;
const [FULL, HALF] = [
  ['2026-05-02', level('full', 0)],
  ['2026-05-09', level(0.5, 100)],
] as const;
const top = (day: string, litres: number) => [day, { kind: 'topped-up', dipstick: 'oil', litres }] as const;
const fall = (...happened: Happenings) => ask(ENGINE + OIL, history(...happened), '2026-05-10');

test('a level stands at the hours that its own entry notes, whatever else was read on that day', () => {
  // A litre in 100 h, and a litre left: half of 100 h.
  expect(fall(FULL, HALF).stands()).toBe('clear 150 h');
  expect(fall(FULL, HALF, ['2026-05-09', meters({ engine: 110 })]).stands()).toBe('clear 150 h');
});

test('what was topped up before the first level is not lost with it', () => {
  expect(fall(top('2026-05-01', 1), FULL, HALF).stands()).toBe('clear 150 h');
  // Two litres in 100 h, and one left: half of 50 h.
  expect(fall(FULL, top('2026-05-03', 1), HALF).stands()).toBe('clear 125 h');
});

test('each top-up is a step', () => {
  const steps = (...tops: Happenings): number => fall(FULL, ...tops, HALF).assessment.steps;
  expect(steps(top('2026-05-03', 0.1), top('2026-05-04', 0.1), top('2026-05-05', 0.1)) - steps()).toBe(3);
});

test('by no hour meter nothing falls', () => {
  const { stands, seen } = ask(`meter out "Hours out" counts h from outings\n${OIL}`, history(['2026-05-01', level('full')]), '2026-05-10');
  expect(stands()).toBe('clear');
  expect(seen('sooner').entries).toEqual([]);
});
