/**
 * A number with what stands behind it. No number of the outlook goes without.
 */
export interface Estimate {
  readonly value: number;
  /** The interval that holds the true value with probability `level`; `null` where there are too few data for one. */
  readonly range: { readonly low: number; readonly high: number; readonly level: number } | null;
  /** How many data it rests on, and of what: "12 readings". */
  readonly n: number;
  readonly of: string;
  /** How it was worked out, in a few words. */
  readonly method: string;
}
