import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { failureFindingInterval, inspectionInterval, looksWithin, meanTimeBetween } from '../../src/outlook/inspection-interval.js';
import { leastSquares, leastSquaresThroughOrigin } from '../../src/outlook/least-squares.js';
import { normalProbability, normalQuantile, studentQuantile } from '../../src/outlook/normal.js';
import { fitPowerLaw, laplaceStatistic, repairTrend } from '../../src/outlook/repair-trend.js';
import { smooth } from '../../src/outlook/smoothing.js';
import { theilSen } from '../../src/outlook/theil-sen.js';
import { median, weightedMedian } from '../../src/outlook/weighted-median.js';

/** How many significant digits two numbers share. */
function digits(actual: number | null | undefined, certified: number): number {
  return -Math.log10(Math.max(Math.abs((actual ?? Number.NaN) - certified) / Math.abs(certified), 1e-16));
}

// NIST StRD, Norris: y, x. https://www.itl.nist.gov/div898/strd/lls/data/Norris.shtml
const norris =
  `0.1 0.2|338.8 337.4|118.1 118.2|888.0 884.6|9.2 10.1|228.1 226.5|668.5 666.3|998.5 996.3|449.1 448.6|778.9 777.0|559.2 558.2|0.3 0.4
|0.1 0.6|778.1 775.5|668.8 666.9|339.3 338.0|448.9 447.5|10.8 11.6|557.7 556.0|228.3 228.1|998.0 995.8|888.8 887.6|119.6 120.2|0.3 0.3
|0.6 0.3|557.6 556.8|339.3 339.1|888.0 887.2|998.5 999.0|778.9 779.0|10.2 11.1|117.6 118.3|228.9 229.2|668.4 669.1|449.2 448.9|0.2 0.5`
    .split('|')
    .map((pair) => pair.trim().split(' ').map(Number))
    .map(([y = 0, x = 0]) => ({ x, y }));

describe('least squares', () => {
  test('NIST StRD NoInt1, certified values', () => {
    const points = Array.from({ length: 11 }, (_, index) => ({ x: 60 + index, y: 130 + index }));
    const line = leastSquaresThroughOrigin(points);
    expect(digits(line?.slope, 2.07438016528926)).toBeGreaterThan(13);
    expect(digits(line?.slopeError, 0.0165289256198347)).toBeGreaterThan(13);
    expect(digits(line?.residualDeviation, 3.56753034006338)).toBeGreaterThan(13);
  });
  test('NIST StRD Norris, certified values', () => {
    const line = leastSquares(norris.map(({ x, y }) => ({ x, y })));
    expect(norris).toHaveLength(36);
    expect(digits(line?.slope, 1.00211681802045)).toBeGreaterThan(13);
    expect(digits(line?.intercept, -0.262323073774029)).toBeGreaterThan(11);
    expect(digits(line?.slopeError, 0.429796848199937e-3)).toBeGreaterThan(11);
    expect(digits(line?.interceptError, 0.232818234301152)).toBeGreaterThan(11);
    expect(digits(line?.residualDeviation, 0.884796396144373)).toBeGreaterThan(11);
  });
  test('there is no line through one point, or straight up', () => {
    expect(leastSquares([{ x: 1, y: 1 }])).toBeNull();
    expect(
      leastSquares([
        { x: 1, y: 1 },
        { x: 1, y: 2 },
      ]),
    ).toBeNull();
    expect(
      leastSquares([
        { x: 1, y: 1 },
        { x: 2, y: 2 },
      ]),
    ).toMatchObject({ slope: 1, slopeError: null });
  });
});

describe('the robust line', () => {
  // Helsel & Hirsch, Statistical Methods in Water Resources, chapter 10; from memory.
  const helsel = [1, 2, 3, 4, 5, 16, 7].map((y, index) => ({ x: index + 1, y }));
  test('Helsel & Hirsch: one wild value does not carry it off', () => {
    expect(theilSen(helsel)).toEqual({ slope: 1, intercept: 0, n: 7, pairs: 21 });
    expect(leastSquares(helsel)?.slope).toBeCloseTo(1.714_285_7, 7);
  });
  test('weights draw it towards what counts more', () => {
    const bent = [0, 1, 2, 3, 7, 11, 15].map((y, x) => ({ x, y, weight: x >= 3 ? 1 : 0.01 }));
    expect(theilSen(bent)?.slope).toBe(4);
  });
  test('turns with the points', () => {
    const near = fc.array(fc.record({ x: fc.integer({ min: 0, max: 50 }), y: fc.integer({ min: 0, max: 50 }) }), {
      minLength: 2,
      maxLength: 12,
    });
    fc.assert(
      fc.property(near, fc.integer({ min: -5, max: 5 }), (points, tilt) => {
        const [flat, tilted] = [theilSen(points), theilSen(points.map(({ x, y }) => ({ x, y: y + tilt * x })))];
        if (flat !== null) expect(tilted?.slope).toBeCloseTo(flat.slope + tilt, 9);
      }),
    );
  });
  test('medians', () => {
    expect([median([3, 1, 2]), median([4, 1, 2, 3]), median([5])]).toEqual([2, 2.5, 5]);
    expect(
      weightedMedian([
        { value: 1, weight: 1 },
        { value: 2, weight: 1 },
        { value: 10, weight: 5 },
      ]),
    ).toBe(10);
  });
});

test('smoothing: NIST/SEMATECH e-Handbook 6.4.3.1, alpha 0.1 (it prints 208.94, rounded by hand)', () => {
  const smoothed = smooth([71, 70, 69, 68, 64, 65, 72, 78, 75, 75, 75, 70], 0.1);
  expect(smoothed?.squaredErrors).toBeCloseTo(208.8184, 4);
  expect(smoothed?.next).toBeCloseTo(71.498_75, 5);
});

describe('repeating repairs', () => {
  // MIL-HDBK-189 (1981), Appendix C, individual failure times; read in a public test suite that transcribes them.
  const handbook = [
    2.6, 16.5, 16.5, 17.0, 21.4, 29.1, 33.3, 56.5, 63.1, 70.6, 73.0, 77.7, 93.9, 95.5, 98.1, 101.1, 132.0, 142.2, 147.7, 149.0, 167.2,
    190.7, 193.0, 198.7, 251.9, 282.5, 286.1,
  ];
  // NIST/SEMATECH e-Handbook 8.1.9.2 and 8.4.2: ten repairs in 1500 hours.
  const nist = [5, 40, 43, 175, 389, 712, 747, 795, 1299, 1478];
  test('MIL-HDBK-189, Appendix C: 27 times to 300', () => {
    const fit = fitPowerLaw(handbook, 300);
    expect(fit?.beta).toBeCloseTo(0.716_339_262_4, 9);
    expect(fit?.lambda).toBeCloseTo(0.453_841_861_4, 9);
    expect(fit?.between).toBeCloseTo(15.510_962_0, 6);
    expect(repairTrend(handbook, 300).says).toBe('getting-better');
  });
  test('NIST: the unbiased estimate is (n − 1)/n of the likeliest', () => {
    expect(((fitPowerLaw(nist, 1500)?.beta ?? 0) * 9) / 10).toBeCloseTo(0.483_506, 5);
  });
  test('repairs that crowd towards the end are getting worse; too few say nothing', () => {
    const worse = [100, 190, 260, 310, 350, 380, 400, 415].map((time) => time);
    expect(repairTrend(worse, 420)).toMatchObject({ says: 'getting-worse', n: 8 });
    expect(repairTrend([100, 200, 300, 400], 500).says).toBe('no-trend-seen');
    expect(laplaceStatistic([100, 200, 300, 400], 500)).toBeCloseTo(0, 12);
    expect(repairTrend([100, 400], 500)).toMatchObject({ says: 'too-few', n: 2, growth: null });
  });
});

describe('inspection intervals', () => {
  test('NAVAIR 00-25-403: looks within the time from sign to failure', () => {
    expect(looksWithin(0.8, 0.01)).toBeCloseTo(2.861_35, 5);
    expect(looksWithin(0.9, 0.001)).toBeCloseTo(3, 12);
    expect(inspectionInterval(100, 0.9, 0.001)).toBeCloseTo(33.333, 3);
  });
  test('failure finding: 20 detectors, 4 years, 8 failures, 99 % available', () => {
    const mean = meanTimeBetween(20, 4, 8);
    expect(mean).toBe(10);
    expect(failureFindingInterval(0.99, mean ?? 0)).toBeCloseTo(0.2, 12);
    expect(Math.round(failureFindingInterval(0.99, mean ?? 0) * 365)).toBe(73);
    expect(meanTimeBetween(20, 4, 0)).toBeNull();
  });
});

describe('distributions, from printed tables', () => {
  test.each([
    [0.5, 0],
    [0.9, 1.281_551_566],
    [0.975, 1.959_963_985],
    [0.01, -2.326_347_874],
    [0.999, 3.090_232_306],
  ])('normal %d', (p, z) => {
    expect(normalQuantile(p)).toBeCloseTo(z, 7);
    expect(normalProbability(z)).toBeCloseTo(p, 6);
  });
  test.each([
    [0.975, 1, 12.706],
    [0.975, 2, 4.303],
    [0.9, 3, 1.638],
    [0.975, 3, 3.182],
    [0.975, 5, 2.571],
    [0.9, 10, 1.372],
    [0.995, 10, 3.169],
    [0.9, 60, 1.296],
  ])('Student %d with %i degrees', (p, freedom, t) => {
    expect(studentQuantile(p, freedom)).toBeCloseTo(t, 3);
  });
});
