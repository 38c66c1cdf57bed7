import type { LineCode, LineProblem } from '../../fleet/line-problem.js';

/** Something to be said of a line: it is no machine, or not all of it is used. */
export interface LineNote {
  /** Counted from 1. */
  readonly line: number;
  /** Keeps its meaning; see docs/fleets.md. */
  readonly code: LineCode;
  /** A sentence without a full stop. */
  readonly what: string;
  /** What to do, as a whole sentence. */
  readonly help: string;
  /** Whether its machine was not judged. */
  readonly refused: boolean;
}

/** What a problem comes to on a line. */
export function noteOf(line: number, { code, what, help }: LineProblem, refused: boolean): LineNote {
  return { line, code, what, help, refused };
}
