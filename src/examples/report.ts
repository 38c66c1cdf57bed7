/**
 * What running the worked examples of a schedule came to.
 */
import type { DuePoint, Hold, Missing, TaskState, Truth, Verdict } from '../assess/assessment.js';
import type { Explanation, Place } from '../explain/explanation.js';
import type { NodeId } from '../graph/rule-graph.js';
import type { Moment } from '../values/moment.js';

/** All examples of a schedule, and how far they cover its rules. */
export interface ExamplesReport {
  readonly format: 'duewright-examples';
  readonly version: 1;
  readonly schedule: { readonly name: string; readonly fingerprint: string };
  readonly holds: boolean;
  readonly expectations: number;
  readonly examples: readonly ExampleRun[];
  readonly coverage: Coverage;
  /** For what no example shows, in the order of the items; empty unless asked for. `item` is an index into the items of the coverage. */
  readonly proposals: readonly { readonly item: number; readonly outcome: CoverageOutcome; readonly proposal: Proposal | null }[];
}

/** A worked example that nobody has written yet, as text to put into the schedule once its author has agreed with it. */
export interface Proposal {
  readonly text: string;
  /** Whether it shows what it was made for. */
  readonly shows: boolean;
  /** Whether it holds as it stands. */
  readonly holds: boolean;
}

/** One example. */
export interface ExampleRun {
  readonly title: string;
  readonly place: Place;
  readonly holds: boolean;
  readonly expectations: readonly Expectation[];
}

/** One `expect`, held against the assessment at its moment. */
export interface Expectation {
  readonly place: Place;
  readonly when: Moment;
  readonly holds: boolean;
  readonly about: ExpectedTask | ExpectedMachine;
}

/** Which parts of an expectation are asserted, and which of them failed. */
export type Asserted = 'state' | 'because' | 'until';

/** What an example expects of a task. */
export interface ExpectedTask {
  readonly kind: 'task';
  readonly task: string;
  readonly expected: {
    readonly state: TaskState;
    /** The author's words for the deciding part. */ readonly because?: string;
    readonly until: readonly string[];
  };
  readonly actual: {
    readonly state: TaskState;
    readonly due: DuePoint | null;
    /** The part of the rules that decided or will decide. */
    readonly governing: { readonly node: NodeId; readonly place: Place } | null;
    readonly missing: readonly Missing[];
  };
  readonly failed: readonly Asserted[];
  /** For a failure: why the task is in the state that it is in. */
  readonly explanation?: Explanation;
}

/** What an example expects of the machine. */
export interface ExpectedMachine {
  readonly kind: 'machine';
  readonly expected: string;
  readonly actual: Verdict;
  readonly holds: readonly Hold[];
  /** Where work is due first and something else was expected: that work. */
  readonly due?: readonly { readonly task: string; readonly state: TaskState }[];
}

/** What of the rules the examples have looked at. */
export interface Coverage {
  readonly wanted: number;
  readonly covered: number;
  readonly items: readonly CoverageItem[];
}

/** What kind of part of the rules an example can show. */
export type CoverageKind = 'limit' | 'occasion' | 'condition' | 'band' | 'defect class';

/** A limit is reached and not reached, a condition comes to all that it can come to, an occasion, a band and a class of defect come up. */
export type CoverageOutcome = 'reached' | 'not reached' | Truth | 'came up';

/** One part of the rules. */
export interface CoverageItem {
  readonly kind: CoverageKind;
  /** The task, defect or stop that it belongs to. */
  readonly of: string;
  readonly place: Place;
  readonly outcomes: readonly {
    readonly outcome: CoverageOutcome;
    /** The first expectation that saw it; `null`: none has. */ readonly by: Place | null;
  }[];
}
