/** A value that counts for so much; weights are positive. */
export interface Weighted {
  readonly value: number;
  readonly weight: number;
}

/**
 * The value that half of the weight lies below; midway between two where the weight splits evenly, so that with equal weights it is the
 * common median. NaN for nothing.
 */
export function weightedMedian(items: readonly Weighted[]): number {
  const sorted = [...items].sort((a, b) => a.value - b.value);
  const half = sorted.reduce((sum, { weight }) => sum + weight, 0) / 2;
  let below = 0;
  for (const [index, { value, weight }] of sorted.entries()) {
    below += weight;
    if (Math.abs(below - half) <= half * 1e-12) return (value + (sorted[index + 1]?.value ?? value)) / 2;
    if (below > half) return value;
  }
  return Number.NaN;
}

/** The common median. NaN for nothing. */
export function median(values: readonly number[]): number {
  return weightedMedian(values.map((value) => ({ value, weight: 1 })));
}
