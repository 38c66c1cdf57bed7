/** A meter that counts days of service from outings (docs/meaning.md §2). */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countDays, type Served } from '../../src/history/count-days.js';
import type { Entry } from '../../src/history/entry.js';
import { readTimeline } from '../../src/history/read-timeline.js';
import { formatDate } from '../../src/values/civil.js';
import { type Day, onDay } from '../../src/values/moment.js';
import { TICKS_PER_UNIT } from '../../src/values/ticks.js';
import { moment } from '../support/history.js';
import { tractor } from './machine-model.js';

function served(entry: string, begins: string, ends: string, ...alongside: readonly string[]): Served {
  return { entry, when: moment(begins), end: moment(ends), ticks: 0, alongside };
}

/** Which outing brought the meter to how many days, and when. */
const days = (...outings: readonly Served[]) =>
  countDays(outings).map(({ entry, when, total, shown }) => {
    expect(total).toBe(shown * TICKS_PER_UNIT);
    return [shown, entry, when];
  });

describe('one more with each day on which an outing is under way', () => {
  test('from when the first of that day begins, whatever the order in which they are told', () => {
    const [early, late] = [served('a', '2026-05-01 08:00', '2026-05-01 09:00'), served('b', '2026-05-01 10:00', '2026-05-01 11:00')];
    const next = served('c', '2026-05-04', '2026-05-04');
    const wanted = [
      [1, 'a', moment('2026-05-01 08:00')],
      [2, 'c', moment('2026-05-04')],
    ];
    expect(days(early, late, next)).toEqual(wanted);
    expect(days(next, late, early)).toEqual(wanted);
  });

  test('with the day itself, of one that goes on from the day before', () => {
    expect(days(served('a', '2026-05-01 22:00', '2026-05-03 02:00'), served('b', '2026-05-03 08:00', '2026-05-04 01:00'))).toEqual([
      [1, 'a', moment('2026-05-01 22:00')],
      [2, 'a', moment('2026-05-02')],
      [3, 'a', moment('2026-05-03')],
      [4, 'b', moment('2026-05-04')],
    ]);
  });

  test('once, though one outing lies within another', () => {
    expect(days(served('a', '2026-05-01', '2026-05-04'), served('b', '2026-05-02', '2026-05-03')).map(([total]) => total)).toEqual([
      1, 2, 3, 4,
    ]);
  });

  test('rests on what the outing rests on', () => {
    expect(countDays([served('a', '2026-05-01', '2026-05-02', 'on')]).map(({ alongside }) => alongside)).toEqual([['on'], ['on']]);
  });

  test('as many as there are days with an outing', () => {
    const outing = fc.record({ from: fc.integer({ min: 20_000, max: 20_030 }), long: fc.integer({ min: 0, max: 5 }) });
    fc.assert(
      fc.property(fc.array(outing, { maxLength: 12 }), (outings) => {
        const points = countDays(
          outings.map(({ from, long }, at) => ({
            entry: `e${at}`,
            when: onDay(from as Day),
            end: onDay((from + long) as Day),
            ticks: 0,
            alongside: [],
          })),
        );
        const under = new Set(outings.flatMap(({ from, long }) => Array.from({ length: long + 1 }, (_, day) => from + day)));
        expect(points.map(({ when }) => when.day)).toEqual([...under].sort((a, b) => a - b));
        expect(points.map(({ shown }) => shown)).toEqual(points.map((_, at) => at + 1));
      }),
    );
  });
});

test('a made-up outing of a thousand years is counted no further than a hundred thousand days', () => {
  const points = countDays([served('a', '1000-01-01', '2026-01-01'), served('b', '2026-05-01', '2026-05-01')]);
  expect(points.length).toBe(100_000);
  // 1000-01-01 and 99 999 days, as Python's datetime has it.
  expect(formatDate(points.at(-1)?.when.day ?? (0 as Day))).toBe('1273-10-15');
});

test('a schedule says so by the unit of a meter that counts from outings', () => {
  const entries: readonly Entry[] = [
    { kind: 'outing', id: 'a', on: '2026-05-01', at: '08:00', until: '10:00', attachments: ['flail-mower'] },
    { kind: 'outing', id: 'b', on: '2026-05-01', at: '12:00', until: '13:00' },
    { kind: 'outing', id: 'c', on: '2026-05-02', at: '20:00' },
  ];
  const [engine, road, work, mower] = tractor.meters;
  const counting = [work, mower].flatMap((meter) => (meter === undefined ? [] : [{ ...meter, unit: 'service-days' }]));
  const model = { ...tractor, meters: [engine, road].flatMap((meter) => meter ?? []).concat(counting) };
  const totals = (meter: string, now: string) =>
    readTimeline(entries, model, moment(now))
      .meters.get(meter)
      ?.points.map(({ entry, shown }) => [entry, shown]);
  expect(totals('work', '2026-05-01 09:00')).toEqual([['a', 1]]);
  expect(totals('work', '2026-05-04')).toEqual([
    ['a', 1],
    ['c', 2],
    ['c', 3],
    ['c', 4],
  ]);
  expect(totals('mower', '2026-05-04')).toEqual([['a', 1]]);
});
