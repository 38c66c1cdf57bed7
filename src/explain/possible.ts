/**
 * What a state could be after a change: the worst and the best case, as far as the record tells.
 *
 * The rules that put states together (§8 of docs/meaning.md) never turn a worse part into a better whole, so that working them
 * out on the two ends bounds every case between them.
 */
import type { TaskState } from '../assess/assessment.js';

const ORDER: readonly TaskState[] = ['overdue', 'due', 'unrecorded', 'unknown', 'coming-up', 'clear', 'resting'];

/** From worst to best; equal when the state is certain. */
export interface Possible {
  readonly worst: TaskState;
  readonly best: TaskState;
}

/** The state is this one. */
export function exactly(state: TaskState): Possible {
  return { worst: state, best: state };
}

/** Nothing can be said. */
export const ANYTHING: Possible = { worst: 'overdue', best: 'resting' };

/** One of these; the first is the worst. */
export function between(worst: TaskState, best: TaskState): Possible {
  return { worst, best };
}

/** The state, when it is certain; otherwise `null`. */
export function certain(possible: Possible): TaskState | null {
  return possible.worst === possible.best ? possible.worst : null;
}

/** How bad a state is: 0 is the worst, overdue. */
export function severity(state: TaskState): number {
  return ORDER.indexOf(state);
}

/** Any part speaks for the whole: the worst counts. Nothing at all is clear. */
export function worstOf(parts: readonly Possible[]): Possible {
  return fold(parts, (a, b) => (severity(a) <= severity(b) ? a : b));
}

/** Whichever last: the best part counts. A part that rests does not take part. */
export function bestOf(parts: readonly Possible[]): Possible {
  return fold(parts, (a, b) => (severity(a) >= severity(b) ? a : b));
}

function fold(parts: readonly Possible[], choose: (a: TaskState, b: TaskState) => TaskState): Possible {
  const [head, ...rest] = parts;
  if (head === undefined) return exactly('clear');
  return rest.reduce((a, b) => ({ worst: choose(a.worst, b.worst), best: choose(a.best, b.best) }), head);
}
