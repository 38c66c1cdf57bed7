/**
 * What a new edition changes for the machines in the field.
 */
import type { DuePoint, TaskState } from '../assess/assessment.js';
import type { Origin } from '../graph/rule-graph.js';

/** Which way a change bears on the owner: asked for sooner, later, counted from elsewhere, or said differently. */
export type Bearing = 'tighter' | 'looser' | 're-anchored' | 'different';

/** One change to one task. */
export interface TaskChange {
  /** What changed: `interval`, `late allowance`, `counting`, `condition`, `procedure`, … */
  readonly what: Aspect;
  readonly bearing: Bearing;
  /** The words before and after; undefined where there were none. */
  readonly before?: { readonly text: string; readonly origin?: Origin };
  readonly after?: { readonly text: string; readonly origin?: Origin };
}

/** What about a task can differ between two editions. */
export type Aspect =
  | 'interval'
  | 'early allowance'
  | 'late allowance'
  | 'lead'
  | 'hard stop'
  | 'counting'
  | 'timing'
  | 'gate'
  | 'title'
  | 'stance'
  | 'readings'
  | 'supplies'
  | 'torques'
  | 'work'
  | 'cautions'
  | 'dependence'
  | 'defects mended'
  | 'serial numbers'
  | 'attachment'
  | 'reason'
  | 'source';

/** What became of one task from one edition to the next. */
export interface TaskComparison {
  readonly task: string;
  readonly title: string;
  readonly status: 'new' | 'gone' | 'changed';
  /** Every bearing among the changes, in the order tighter, looser, re-anchored, different. */
  readonly bearings: readonly Bearing[];
  readonly changes: readonly TaskChange[];
}

/** A due point of one machine that moves. */
export interface Move {
  readonly machine: string;
  readonly task: string;
  readonly before: { readonly state: TaskState | 'absent'; readonly due: DuePoint | null };
  readonly after: { readonly state: TaskState | 'absent'; readonly due: DuePoint | null };
  /** after − before on the axis that both share (days, or ticks); `null` where they share none. */
  readonly by: number | null;
  /** The changes that did it; empty where only another task's change did. */
  readonly why: readonly TaskChange[];
}

/** The answer of `compareEditions`. */
export interface Comparison {
  readonly format: 'duewright-comparison';
  readonly version: 1;
  readonly before: { readonly name: string; readonly edition: number | null; readonly fingerprint: string; readonly meaning: string };
  readonly after: { readonly name: string; readonly edition: number | null; readonly fingerprint: string; readonly meaning: string };
  /** True if the two mean the same, however they are laid out. */
  readonly same: boolean;
  readonly tasks: readonly TaskComparison[];
  /** Other declarations (meters, gauges, defects, positions, …) that are new, gone or changed, by kind and id. */
  readonly declarations: readonly { readonly kind: string; readonly id: string; readonly status: 'new' | 'gone' | 'changed' }[];
  readonly moves: readonly Move[];
}
