/**
 * How much a schedule may ask for, so that a hostile one is refused and not endured.
 */
export interface Limits {
  /** Files that lead to one another by `use`, `varies` and `follows`. */
  readonly depth: number;
  /** Files in all. */
  readonly files: number;
  /** Rules in all: a task counts once for each of its timing clauses, any other declaration once. */
  readonly rules: number;
  /** Mistakes of meaning that are told; past them checking stops. */
  readonly mistakes: number;
}

export const defaultLimits: Limits = { depth: 8, files: 32, rules: 5000, mistakes: 100 };
