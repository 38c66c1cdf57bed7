import { expect, test } from 'vitest';
import { readTimeline } from '../../src/history/read-timeline.js';
import { workNotNoted } from '../../src/history/work-not-noted.js';
import { compileText } from '../support/compile-text.js';
import { tractor } from './machine-model.js';
import { type Happenings, history, meters, moment } from '../support/history.js';

const graph = compileText(`
meter starts "Starts" counts starts
meter engine "Hour meter" counts h
task look "Look it over" before each day's work
`);
const HOUR = 36_000;
const asked = (...entries: Happenings): ReturnType<typeof workNotNoted> =>
  workNotNoted(readTimeline(history(...entries), graph, moment('2026-05-20 07:00')), graph);
const outing = (hours: number): Happenings[number][1] => ({ kind: 'outing', hours });

test('hours alone are work that is not on record, from the first reading on', () => {
  expect(asked(['2026-05-01', meters({ engine: 5 })], ['2026-05-09', meters({ engine: 12 })])).toEqual({
    meter: 'engine',
    since: moment('2026-05-01'),
    risen: 7 * HOUR,
    noted: 0,
    read: moment('2026-05-09'),
  });
});

test('goes by the first hour meter of the machine itself, not of what it wears, nor by one that counts from outings', () => {
  const [engine] = tractor.meters;
  if (engine === undefined) throw new Error('no meter');
  const shaft = { ...engine, id: 'shaft', attachment: 'flail-mower' };
  const out = { ...engine, id: 'out', fromOutings: true };
  const model = { ...tractor, meters: [out, shaft, engine, { ...engine, id: 'spare' }] };
  const entries = history(
    ['2026-05-01', meters({ shaft: 0, engine: 5, spare: 0 })],
    ['2026-05-09', meters({ shaft: 50, engine: 12, spare: 90 })],
  );
  const told = (meters: typeof model.meters) =>
    workNotNoted(readTimeline(entries, { ...model, meters }, moment('2026-05-20 07:00')), { ...model, meters });
  expect(told(model.meters)).toMatchObject({ meter: 'engine', risen: 7 * HOUR });
  expect(told([out, shaft])).toBeNull();
});

test('of many readings the last tells how far it rose', () => {
  const days = [5, 12, 20].map((hours, index) => [`2026-05-0${index + 1}`, meters({ engine: hours })] as const);
  expect(asked(...days)).toMatchObject({ risen: 15 * HOUR, read: moment('2026-05-03') });
});

test('what was read during an outing that is under way may be its own', () => {
  const before = ['2026-05-01', meters({ engine: 5 })] as const;
  expect(asked(before, ['2026-05-08 06:00', { kind: 'outing' }], ['2026-05-09', meters({ engine: 12 })])).toBeNull();
  // How long it has taken so far nobody knows.
  expect(asked(before, ['2026-05-08', { kind: 'outing' }], ['2026-05-09', meters({ engine: 12 })])).toBeNull();
});

test('what the last outing explains is not told of, nor what hours and clock differ by', () => {
  const first = ['2026-05-01', meters({ engine: 100 })] as const;
  expect(asked(first, ['2026-05-02', outing(8)], ['2026-05-03', meters({ engine: 108 })])).toBeNull();
  expect(asked(first, ['2026-05-02', outing(8)], ['2026-05-03', meters({ engine: 110.9 })])).toBeNull();
  expect(asked(first, ['2026-05-02', outing(8)], ['2026-05-03', meters({ engine: 111 })])).toMatchObject({
    risen: 11 * HOUR,
    noted: 8 * HOUR,
  });
  expect(asked(first, ['2026-05-02', meters({ engine: 100.9 })])).toBeNull();
});

test('work of long ago is not asked after again once outings explain what followed', () => {
  const before: Happenings = [
    ['2026-05-01', meters({ engine: 100 })],
    ['2026-05-05', meters({ engine: 150 })],
  ] as const;
  expect(asked(...before)).not.toBeNull();
  expect(asked(...before, ['2026-05-06', outing(3)], ['2026-05-07', meters({ engine: 153 })])).toBeNull();
});

test('while an outing is under way, and without a reading, nothing is told', () => {
  expect(
    asked(['2026-05-01', meters({ engine: 5 })], ['2026-05-09', meters({ engine: 12 })], ['2026-05-20 06:30', { kind: 'outing' }]),
  ).toBeNull();
  expect(asked(['2026-05-01', meters({ starts: 5 })], ['2026-05-09', meters({ starts: 12 })])).toBeNull();
});
