import { median, weightedMedian } from './weighted-median.js';
import type { Weighted } from './weighted-median.js';

/** A point, and how much it counts; 1 where no weight is given. */
export interface Point {
  readonly x: number;
  readonly y: number;
  readonly weight?: number;
}

/** A robust line through points. */
export interface RobustLine {
  readonly slope: number;
  readonly intercept: number;
  /** Points, and pairs of them with different x, that the slope is the median of. */
  readonly n: number;
  readonly pairs: number;
}

/**
 * The Theil–Sen line: the median of the slopes of all pairs of points, through the medians of both coordinates.
 *
 * Up to 29 % of the points can be wrong in any way without carrying it off. With weights, a pair counts for the product of its two points'.
 * `bySpan` lets a pair also count for its distance in x, so that many short pairs do not outvote the long ones.
 * O(n² log n): thin out thousands of points first. `null` where no two points differ in x.
 *
 * Source: Helsel & Hirsch, Statistical Methods in Water Resources, chapter 10.
 *
 * @example theilSen([{ x: 1, y: 1 }, { x: 2, y: 2 }, { x: 3, y: 9 }])?.slope // 4
 */
export function theilSen(points: readonly Point[], options: { readonly bySpan?: boolean } = {}): RobustLine | null {
  const slopes: Weighted[] = [];
  points.forEach((a, index) => {
    for (const b of points.slice(index + 1)) {
      const span = Math.abs(b.x - a.x);
      if (span === 0) continue;
      const weight = (a.weight ?? 1) * (b.weight ?? 1) * (options.bySpan === true ? span : 1);
      slopes.push({ value: (b.y - a.y) / (b.x - a.x), weight });
    }
  });
  if (slopes.length === 0) return null;
  const slope = weightedMedian(slopes);
  const intercept = median(points.map(({ y }) => y)) - slope * median(points.map(({ x }) => x));
  return { slope, intercept, n: points.length, pairs: slopes.length };
}
