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
/** Seeds from here on were held out: what the forecaster takes for granted was set on owners of other seeds, and never on `jobs`. */
const HELD_OUT = 810_000;

interface Held {
  /** Of many owners, the share whose truth lies in the range of the forecast. */
  readonly held: number;
  /** The middle of how far the ranges reach, over how far ahead they are. */
  readonly reach: number;
}

/** Records of `least` to `most` days, spread evenly. */
function calibration(habit: Habit, least: number, most: number, owners = OWNERS): Held {
  let [hit, told] = [0, 0];
  const reaches: number[] = [];
  for (let owner = 0; owner < owners; owner += 1) {
    const { track, now, truth } = simulateOwner(HELD_OUT + owner, habit, least + ((owner * 53) % (most - least)), AHEAD);
    // So many hours on from the last reading, whatever the future holds.
    const total = (track.points.at(-1)?.total ?? 0) + (15 + ((owner * 37) % 120)) * 36_000;
    const found = truth.findIndex((reached) => reached >= total);
    const due = found < 0 ? Infinity : found;
    const futures = useFutures(track, { count: 300, days: AHEAD });
    if (due <= now || futures === null) continue;
    const range = forecastTotal(futures, total, now);
    told += 1;
    const [early, late] = [range?.early ?? now + AHEAD, range?.late ?? Infinity];
    if (due >= early && due <= late) hit += 1;
    reaches.push((Math.min(late, now + AHEAD) - early) / (Math.min(range?.likely ?? Infinity, now + AHEAD) - now + 1));
  }
  reaches.sort((a, b) => a - b);
  return { held: hit / told, reach: reaches[reaches.length >> 1] ?? Number.NaN };
}

describe('of the 80 % ranges, 75 to 85 % hold the truth', () => {
  test.each<[string, Habit, number, number]>([
    ['steady owners, half a year to three years on record', 'steady', 180, 1100],
    ['seasonal owners, a year and a half to three years on record', 'seasonal', 550, 1150],
    ['owners who work in bursts, three months to three years on record', 'bursts', 90, 1100],
    ['owners who work by jobs, three months to three years on record', 'jobs', 90, 1100],
  ])('%s', (_, habit, least, most) => {
    const { held } = calibration(habit, least, most);
    expect(held).toBeGreaterThanOrEqual(0.75);
    expect(held).toBeLessThanOrEqual(0.85);
  });
});

describe('of a short record, whose season nobody knows, the range is wide', () => {
  test.each<[Habit, number]>([
    ['steady', 0.8],
    ['bursts', 0.8],
    // A season that turns is what a few weeks show least of.
    ['seasonal', 0.6],
    ['jobs', 0.6],
  ])('%s owners, two weeks to three months on record', (habit, least) => {
    const short = calibration(habit, 14, 90, OWNERS / 2);
    expect(short.held).toBeGreaterThanOrEqual(least);
    // It reaches further than it lies ahead.
    expect(short.reach).toBeGreaterThan(1.2);
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
    expect(forecast).toMatchObject({
      n: 41,
      of: 'days with a reading',
      method: expect.stringMatching(/^1000 simulated futures from 28 weeks of use/) as unknown,
      level: 0.8,
    });
  });
  test('say of a single week on record that it is one', () => {
    expect(useFutures(track(7, 1, (day) => day))?.method).toMatch(/^1000 simulated futures from 1 week of use/);
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
