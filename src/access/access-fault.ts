/**
 * What is wrong with a schedule's access rules, with the steps that a person would take to find out.
 */
import type { Origin } from '../graph/rule-graph.js';

/** What can be wrong with the stances of a machine (docs/walk-round.md). */
export type AccessFaultKind =
  | 'out-of-reach'
  | 'dead-end'
  | 'forbidden-from-the-start'
  | 'idle-step'
  | 'under-raised-part'
  | 'no-way-to-walk'
  | 'too-many-stances'
  | 'tangled-condition';

/** What is wrong with the stances of a machine, and the shortest way into it. */
export interface AccessFault {
  readonly kind: AccessFaultKind;
  readonly at: Origin;
  /** One sentence; names in backticks. */
  readonly message: string;
  /** The shortest counterexample: what a person would do, from rest, step by step. Empty where there is nothing to do. */
  readonly way: readonly string[];
  /** The rule that blocks it, with a few words. */
  readonly rule?: { readonly at: Origin; readonly text: string };
  readonly help: string;
}
