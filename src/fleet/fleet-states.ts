import type { TaskState, Verdict } from '../assess/assessment.js';

/** States as small numbers, from the mildest to the gravest: of parts, the greatest speaks for *first*, the least for *last*. */
export const STATES: readonly TaskState[] = ['resting', 'clear', 'coming-up', 'unknown', 'unrecorded', 'due', 'overdue'];
export const RESTING = 0;
export const CLEAR = 1;
export const COMING_UP = 2;
export const UNKNOWN = 3;
export const UNRECORDED = 4;
export const DUE = 5;
export const OVERDUE = 6;

/** Verdicts as small numbers. */
export const VERDICTS: readonly Verdict[] = ['ready', 'work-due-first', 'cannot-tell', 'held'];

/** What a machine's tasks have to say about its verdict, as bits. */
export const WORK = 1;
export const HIDDEN_HOLD = 2;
export const HELD = 4;

/**
 * The answer for a fleet: the task `t` of machine `m` stands at `t * stride + m`.
 *
 * @example STATES[answer.state[task * answer.stride + machine]]
 */
export class FleetStates {
  /** Index in {@link STATES}. */
  readonly state: Uint8Array;
  /** What is left of the governing limit, in ticks or days; NaN where there is none. */
  readonly left: Float64Array;
  /** Node id of the limit that decided or will decide; −1 where there is none. */
  readonly governing: Int32Array;
  /** By machine: index in {@link VERDICTS}. */
  readonly verdict: Uint8Array;
  /** By machine: bits. */
  readonly flags: Uint8Array;

  constructor(
    tasks: number,
    readonly stride: number,
  ) {
    this.state = new Uint8Array(tasks * stride);
    this.left = new Float64Array(tasks * stride);
    this.governing = new Int32Array(tasks * stride);
    this.verdict = new Uint8Array(stride);
    this.flags = new Uint8Array(stride);
  }
}

/** The verdict that the bits of a machine come to (docs/meaning.md §8). */
export function verdictOfFlags(flags: number): number {
  if ((flags & HELD) !== 0) return 3;
  if ((flags & HIDDEN_HOLD) !== 0) return 2;
  return (flags & WORK) !== 0 ? 1 : 0;
}
