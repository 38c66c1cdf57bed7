/**
 * Days of many futures at once, in columns: what is worked out along a thousand courses is worked out in one pass over typed arrays.
 */

/** Later than any day that is looked at, and a small whole number still, which is what the columns are quick with. */
export const FAR = 2 ** 30 - 1;

/** Some futures by their numbers, and the day on which a task is done in each. The first `count` places hold. */
export interface Doings {
  count: number;
  readonly future: Int32Array;
  readonly day: Int32Array;
}

/**
 * One rule: brings the day in each place of `due` forward to the day on which the rule falls due after that doing, where that is earlier.
 *
 * What stands in `due` beforehand bounds the search, so whichever comes first is reckoned by asking one rule after the other. Called once for each
 * round of doings, in order: a rule that keeps a beat goes on from the round before.
 */
export type BringForward = (doings: Doings, due: Int32Array) => void;

/** A rule that brings nothing that could be foreseen. */
export const NEVER: BringForward = () => undefined;

/** Columns to work in, lent and taken back, so that following a task makes no garbage. */
export interface Columns {
  lend(): Int32Array;
  giveBack(column: Int32Array): void;
}

/** Columns of so many places. */
export function columnsOf(places: number): Columns {
  const idle: Int32Array[] = [];
  return {
    lend: () => idle.pop() ?? new Int32Array(places),
    giveBack: (column) => void idle.push(column),
  };
}
