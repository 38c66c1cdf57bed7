/**
 * How words are laid out and dressed. The host decides; the core never looks at a terminal.
 */
import type { TaskState } from '../assess/assessment.js';
import type { Caution } from '../graph/rule-graph.js';

/** Functions that dress a piece of one line, without changing its letters. */
export interface Paint {
  /** What matters most in the line. */
  readonly strong: (text: string) => string;
  /** What stands beside it. */
  readonly quiet: (text: string) => string;
  /** A mark or a word for a state. */
  readonly state: (state: TaskState, text: string) => string;
  /** The word that opens a caution. */
  readonly signal: (signal: Caution['signal'], text: string) => string;
}

/** How wide and how dressed an answer comes. */
export interface Style {
  /** Columns; lines are wrapped to it, except where one word is longer. */
  readonly width: number;
  /** False: marks and rules are drawn in ASCII (the author's own words are left as they are). */
  readonly unicode: boolean;
  readonly paint: Paint;
}

const asIs = (text: string): string => text;

/** Nothing is dressed: for files, tests and terminals without colour. */
export const NO_PAINT: Paint = { strong: asIs, quiet: asIs, state: (_state, text) => text, signal: (_signal, text) => text };

/** Plain text of a width, 80 unless another is given. */
export function plainStyle(width = 80, unicode = true): Style {
  return { width, unicode, paint: NO_PAINT };
}
