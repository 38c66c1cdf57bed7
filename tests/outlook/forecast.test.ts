import { describe, expect, test } from 'vitest';
import { forecastTotal } from '../../src/outlook/forecast.js';
import { rateOfUse, ratesOfUse } from '../../src/outlook/rate-of-use.js';
import { dayReached, totalOn } from '../../src/outlook/course-days.js';
import { useFutures } from '../../src/outlook/use-futures.js';
import { weeklyUse } from '../../src/outlook/weekly-use.js';
import type { MeterTrack } from '../../src/history/timeline.js';
import type { Day } from '../../src/values/moment.js';
import { simulateOwner } from './simulated-owner.js';
import type { Habit } from './simulated-owner.js';

const OWNERS = 400;
const AHEAD = 690;

/** Of many owners, the share whose truth lies in the range of the forecast. */
function calibration(habit: Habit, before: (seed: number) => number): number {
  let [hit, told] = [0, 0];
  for (let seed = 1; seed <= OWNERS; seed += 1) {
    const { track, now, truth } = simulateOwner(seed, habit, before(seed), AHEAD);
    // So many hours on from the last reading, whatever the future holds.
    const total = (track.points.at(-1)?.total ?? 0) + (15 + ((seed * 37) % 120)) * 36_000;
    const found = truth.findIndex((reached) => reached >= total);
    const due = found < 0 ? Infinity : found;
    if (due <= now) continue;
    const futures = useFutures(track, { count: 300, days: AHEAD });
    const range = futures === null ? null : forecastTotal(futures, total, now);
    told += 1;
    const [early, late] = [range?.early ?? now + AHEAD, range?.late ?? Infinity];
    if (due >= early && due <= late) hit += 1;
  }
  return hit / told;
}

describe('of the 80 % ranges, 75 to 85 % hold the truth', () => {
  test.each<[string, Habit, (seed: number) => number]>([
    ['steady owners, two months to three years on record', 'steady', (seed) => 60 + ((seed * 53) % 1000)],
    ['seasonal owners, a year and a half to three years on record', 'seasonal', (seed) => 550 + ((seed * 53) % 600)],
    ['owners who work in bursts, four months to three years on record', 'bursts', (seed) => 120 + ((seed * 53) % 1000)],
  ])('%s', (_, habit, before) => {
    const held = calibration(habit, before);
    expect(held).toBeGreaterThanOrEqual(0.75);
    expect(held).toBeLessThanOrEqual(0.85);
  });
});

/** A track with a reading each `gap` days; hours by day. */
function track(days: number, gap: number, hours: (day: number) => number): MeterTrack {
  const points = [];
  for (let day = 0; day <= days; day += gap) {
    const shown = hours(day);
    points.push({ entry: `r${day}`, when: { day: day as Day, minute: null }, total: Math.round(shown * 36_000), shown, alongside: [] });
  }
  return { points };
}

describe('futures', () => {
  const steady = track(200, 5, (day) => 100 + day / 2);
  test('the same seed gives the same futures, another seed others', () => {
    const [a, b, c] = [1, 1, 2].map((seed) => useFutures(steady, { count: 20, seed }));
    expect(a).toEqual(b);
    expect(a?.totals).not.toEqual(c?.totals);
  });
  test('totals never fall, and a total is reached on the day from which it stands', () => {
    const { track: bursts } = simulateOwner(3, 'bursts', 300, 10);
    const futures = useFutures(bursts, { count: 40, days: 400 });
    if (futures === null) throw new Error('no futures');
    const first = futures.totals[0] ?? 0;
    for (let f = 0; f < futures.count; f += 1) {
      for (const more of [1, 360_000, 1_800_000]) {
        const day = dayReached(futures, f, first + more);
        if (!Number.isFinite(day)) continue;
        expect(totalOn(futures, f, day)).toBeGreaterThanOrEqual(first + more - 1e-3);
        expect(totalOn(futures, f, day - 1)).toBeLessThan(first + more);
      }
    }
  });
  test('centre on steady use: 50 h at half an hour a day come in about 100 days', () => {
    const futures = useFutures(steady);
    const forecast = futures === null ? null : forecastTotal(futures, 250 * 36_000, 200 as Day);
    expect(Math.abs((forecast?.likely ?? 0) - 300)).toBeLessThan(5);
    expect(forecast).toMatchObject({ n: 41, of: 'days with a reading', method: '1000 simulated futures from 28 weeks of use', level: 0.8 });
  });
  test('say nothing without a week on record, or of a machine that stands', () => {
    expect(useFutures(track(6, 3, (day) => day))).toBeNull();
    expect(useFutures(track(100, 5, () => 7))).toBeNull();
    expect(useFutures({ points: [] })).toBeNull();
  });
  test('weeks of use add up to what the meter counted', () => {
    const use = weeklyUse(track(70, 4, (day) => day * day));
    expect(use?.weeks).toHaveLength(9);
    expect((use?.weeks ?? []).reduce((sum, week) => sum + week, 0)).toBeCloseTo(
      (68 * 68 - (4 * 4 + ((5 - 4) * (8 * 8 - 4 * 4)) / 4)) * 36_000,
      3,
    );
  });
});

describe('the rate of use', () => {
  const at = (day: number) => ({ day: day as Day, minute: null });
  test('of steady use, with how many data stand behind it', () => {
    expect(
      rateOfUse(
        track(200, 5, (day) => 100 + day / 2),
        at(200),
      ),
    ).toMatchObject({ perDay: 18_000, n: 41, of: 'days with a reading', until: 200 });
  });
  test('is not carried off by one wrong reading', () => {
    const wrong = track(200, 5, (day) => 100 + day / 2 + (day === 150 ? 30 : 0));
    expect(rateOfUse(wrong, at(200))?.perDay).toBeCloseTo(18_000, -2);
  });
  test('recent use weighs more', () => {
    const busier = track(720, 5, (day) => (day < 480 ? day / 4 : 120 + (day - 480)));
    expect((rateOfUse(busier, at(720))?.perDay ?? 0) / 36_000).toBeGreaterThan(0.8);
  });
  test('shows seasons once there is a year', () => {
    const summer = track(730, 5, (day) => 0.75 * day + 40 * (1 - Math.cos((day / 365) * 2 * Math.PI)));
    const seasons = rateOfUse(summer, at(730))?.seasons ?? [];
    const factor = (month: number): number => seasons.find((season) => season.month === month)?.factor ?? 0;
    // Day 0 is 1 January; the sine is steepest a quarter of a year on.
    expect(factor(4)).toBeGreaterThan(1.5);
    expect(factor(10)).toBeLessThan(0.5);
    expect(
      rateOfUse(
        track(300, 5, (day) => day),
        at(300),
      )?.seasons,
    ).toBeNull();
  });
  test('is not made up', () => {
    expect(rateOfUse({ points: [] }, at(1))).toBeNull();
    expect(
      rateOfUse(
        track(0, 5, () => 7),
        at(1),
      ),
    ).toBeNull();
    expect(
      rateOfUse(
        track(100, 5, () => 7),
        at(100),
      ),
    ).toBeNull();
    expect([
      ...ratesOfUse(
        new Map([
          ['a', track(100, 5, () => 7)],
          ['b', track(100, 5, (day) => day)],
        ]),
        at(100),
      ),
    ]).toEqual([['b', 36_000]]);
  });
});
