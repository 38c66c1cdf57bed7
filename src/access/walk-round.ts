/**
 * The answer that an owner gets: what to do, in which order, why each line is there, and back again. Plain data, fit for JSON.
 *
 * The shape is published as grammar/walk-round.schema.json, which is made from the types below.
 */
import type { Caution, Stance } from '../graph/rule-graph.js';

/** Why a step stands where it does. */
export interface StepWhy {
  /**
   * Later lines (by number) that need this part where the step puts it: by their own condition, by a never-rule, or because they move
   * the part on from there; with the words of that rule. That nobody is to be under a part that is held up by nothing is told as a
   * condition too: "loader not aloft".
   */
  readonly enables: readonly { readonly line: number; readonly by: 'condition' | 'never' | 'next-move'; readonly rule: string }[];
  /** Tasks that this comes down to in the end, through other steps or at once. */
  readonly tasks: readonly string[];
  /** It puts the part where it has to be at the end. */
  readonly putsBack: boolean;
}

interface LineCommon {
  /** From 1. */
  readonly number: number;
  readonly title: string;
  readonly place: string | null;
  readonly seconds: number;
  /** Seconds from the beginning to the end of this line. */
  readonly total: number;
  /** Stand before the line: nobody does it before having read them. */
  readonly cautions: readonly Caution[];
  readonly qualified: boolean;
  readonly tools: readonly string[];
  readonly procedure: readonly string[];
  /** The stance after this line, part by part: whoever stops here starts the next walk-round from it. */
  readonly stance: Stance;
  /** The parts that are then not as at rest. */
  readonly leftOpen: readonly { readonly part: string; readonly position: string }[];
}

/** A walk from one place to another. */
export interface WalkLine extends LineCommon {
  readonly kind: 'walk';
  readonly from: string;
}

/** A step: one part is moved. */
export interface StepLine extends LineCommon {
  readonly kind: 'step';
  readonly step: string;
  readonly isBack: boolean;
  readonly part: string;
  readonly from: string;
  readonly to: string;
  readonly why: StepWhy;
  readonly reason: string | null;
}

/** A task, done where one stands. */
export interface TaskLine extends LineCommon {
  readonly kind: 'task';
  readonly task: string;
  /** Tasks asked for that count as done with this one. */
  readonly covers: readonly string[];
  /** Not asked for: this task must follow it. */
  readonly broughtBy: string | null;
  /** The words of the stance that it asks for. */
  readonly needs: string | null;
  readonly uses: readonly { readonly supply: string; readonly amount: number }[];
  readonly torques: readonly { readonly what: string; readonly written: string }[];
  readonly reason: string | null;
}

/** One line of a walk-round. */
export type WalkRoundLine = WalkLine | StepLine | TaskLine;

/** How sure it is that nothing is shorter. All in seconds. */
export type WalkProof =
  | { readonly kind: 'optimal'; readonly expanded: number }
  | { readonly kind: 'bounded'; readonly atLeast: number; readonly gap: number; readonly expanded: number };

/** A task that cannot be done from here, and what is in the way. */
export interface LeftOut {
  readonly task: string;
  readonly because: 'out-of-reach' | 'unknown-task';
  /** What a person could do towards it, then what is blocked. */
  readonly way: readonly string[];
  readonly rule: string | null;
}

/** The answer of `walkRound`: the lines in the order in which they are done, what they take, and what cannot be reached. */
export interface WalkRound {
  readonly format: 'duewright-walk-round';
  readonly version: 1;
  readonly schedule: { readonly name: string; readonly title: string; readonly fingerprint: string };
  readonly asked: readonly string[];
  readonly start: { readonly stance: Stance; readonly place: string | null; readonly breaks: readonly string[] };
  readonly end: 'rest' | 'work';
  /** `found`: the lines lead through everything and back. `impossible`: proved that there is no such order. `undecided`: given up before one was found. */
  readonly outcome: 'found' | 'impossible' | 'undecided';
  /** Only where it is undecided: no order takes less than so many seconds. */
  readonly atLeast?: number;
  readonly lines: readonly WalkRoundLine[];
  /** The first line after the last task: from here on the machine is put back. One past the end where there is nothing to put back. */
  readonly backFrom: number;
  readonly leftOut: readonly LeftOut[];
  readonly totals: { readonly seconds: number; readonly steps: number; readonly walking: number; readonly tasks: number };
  readonly tools: readonly string[];
  readonly supplies: readonly { readonly supply: string; readonly amount: number }[];
  readonly qualified: boolean;
  readonly proof: WalkProof | null;
}
