import type { Point } from './theil-sen.js';

/** A line of least squares. Standard deviations are `null` where no degree of freedom is left. */
export interface FittedLine {
  readonly slope: number;
  readonly intercept: number;
  readonly slopeError: number | null;
  readonly interceptError: number | null;
  readonly residualDeviation: number | null;
  readonly n: number;
}

/**
 * The line of least squares; weights are not used. `null` where no two points differ in x.
 *
 * Sums are taken about the means, so that large x cost no digits.
 */
export function leastSquares(points: readonly Point[]): FittedLine | null {
  const n = points.length;
  const meanX = sum(points.map(({ x }) => x)) / n;
  const meanY = sum(points.map(({ y }) => y)) / n;
  const xx = sum(points.map(({ x }) => (x - meanX) ** 2));
  if (n < 2 || xx === 0) return null;
  const slope = sum(points.map(({ x, y }) => (x - meanX) * (y - meanY))) / xx;
  const intercept = meanY - slope * meanX;
  const residual = deviation(points, slope, intercept, n - 2);
  return {
    slope,
    intercept,
    slopeError: residual === null ? null : residual / Math.sqrt(xx),
    interceptError: residual === null ? null : residual * Math.sqrt(1 / n + meanX ** 2 / xx),
    residualDeviation: residual,
    n,
  };
}

/** The line of least squares through the origin; `null` where every x is 0. */
export function leastSquaresThroughOrigin(points: readonly Point[]): FittedLine | null {
  const xx = sum(points.map(({ x }) => x * x));
  if (xx === 0) return null;
  const slope = sum(points.map(({ x, y }) => x * y)) / xx;
  const residual = deviation(points, slope, 0, points.length - 1);
  return {
    slope,
    intercept: 0,
    slopeError: residual === null ? null : residual / Math.sqrt(xx),
    interceptError: null,
    residualDeviation: residual,
    n: points.length,
  };
}

function deviation(points: readonly Point[], slope: number, intercept: number, freedom: number): number | null {
  if (freedom <= 0) return null;
  return Math.sqrt(sum(points.map(({ x, y }) => (y - intercept - slope * x) ** 2)) / freedom);
}

/** Neumaier's compensated sum. */
function sum(values: readonly number[]): number {
  let total = 0;
  let lost = 0;
  for (const value of values) {
    const next = total + value;
    lost += Math.abs(total) >= Math.abs(value) ? total - next + value : value - next + total;
    total = next;
  }
  return total + lost;
}
