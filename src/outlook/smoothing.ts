/** A series smoothed, and what it says of its next value. */
export interface Smoothed {
  /** The value to expect next. */
  readonly next: number;
  /** Sum of squares of what was expected less what came, from the second value on. */
  readonly squaredErrors: number;
  readonly n: number;
}

/**
 * Single exponential smoothing: each expectation moves by `alpha` of its error. It starts at the first value.
 *
 * `null` for an empty series. Source: NIST/SEMATECH e-Handbook 6.4.3.1.
 */
export function smooth(values: readonly number[], alpha: number): Smoothed | null {
  const [first, ...rest] = values;
  if (first === undefined) return null;
  let expected = first;
  let squaredErrors = 0;
  for (const value of rest) {
    squaredErrors += (value - expected) ** 2;
    expected += alpha * (value - expected);
  }
  return { next: expected, squaredErrors, n: values.length };
}
