/**
 * What a state could be after a change: the worst and the best case, as far as the record tells.
 *
 * The rules that put states together (§8 of docs/meaning.md) never turn a worse part into a better whole, so that working them
 * out on the two ends bounds every case between them.
 */
import type { TaskState } from '../assess/assessment.js';

const SEVERITY: Readonly<Record<TaskState, number>> = {
  overdue: 0,
  due: 1,
  unrecorded: 2,
  unknown: 3,
  'coming-up': 4,
  clear: 5,
  resting: 6,
};

/** From worst to best; equal when the state is certain. */
export interface Possible {
  readonly worst: TaskState;
  readonly best: TaskState;
}

const EXACTLY: Readonly<Record<TaskState, Possible>> = {
  overdue: between('overdue', 'overdue'),
  due: between('due', 'due'),
  unrecorded: between('unrecorded', 'unrecorded'),
  unknown: between('unknown', 'unknown'),
  'coming-up': between('coming-up', 'coming-up'),
  clear: between('clear', 'clear'),
  resting: between('resting', 'resting'),
};

/** The state is this one. */
export function exactly(state: TaskState): Possible {
  return EXACTLY[state];
}

/** Nothing can be said. */
export const ANYTHING: Possible = { worst: 'overdue', best: 'resting' };

/** One of these; the first is the worst. */
/* @__NO_SIDE_EFFECTS__ */
export function between(worst: TaskState, best: TaskState): Possible {
  return { worst, best };
}

/** The state, when it is certain; otherwise `null`. */
export function certain(possible: Possible): TaskState | null {
  return possible.worst === possible.best ? possible.worst : null;
}

/** How bad a state is: 0 is the worst, overdue. */
export function severity(state: TaskState): number {
  return SEVERITY[state];
}

/** Either part speaks for the whole: the worse counts. */
export function worseOf(a: Possible, b: Possible): Possible {
  return joined(worse(a.worst, b.worst) ? a.worst : b.worst, worse(a.best, b.best) ? a.best : b.best);
}

/** Whichever last, of two parts: the better counts. A part that rests does not take part. */
export function betterOf(a: Possible, b: Possible): Possible {
  return joined(worse(b.worst, a.worst) ? a.worst : b.worst, worse(b.best, a.best) ? a.best : b.best);
}

function worse(a: TaskState, b: TaskState): boolean {
  return SEVERITY[a] <= SEVERITY[b];
}

function joined(worst: TaskState, best: TaskState): Possible {
  return worst === best ? EXACTLY[worst] : { worst, best };
}
