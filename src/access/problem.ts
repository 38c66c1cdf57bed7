/**
 * The question that the search answers, apart from any schedule: parts that move, places to stand, things to be done.
 *
 * Everything is an index or a whole number of seconds, so that a machine, a puzzle from the planning literature and a random test
 * case are all stated in the same way. {@link problemFor} (from-graph.ts) makes one from a rule graph.
 */
import type { PartSizes, Stance, StanceSet } from './stance-set.js';

/** One way of moving one part. A step of a schedule that has a way back becomes two of these. */
export interface Move {
  readonly part: number;
  readonly from: number;
  readonly to: number;
  /** What the other parts must be like, before, during and after. Says nothing about `part` itself. */
  readonly during: StanceSet;
  /** Where the person must stand; `null`: anywhere. */
  readonly place: number | null;
  /** Whole, 0 or more. */
  readonly seconds: number;
}

/** One thing to be done. It leaves every part where it is. */
export interface Need {
  readonly stance: StanceSet;
  readonly place: number | null;
  readonly seconds: number;
  /** Needs, by index, that must have been met before this one. */
  readonly after: readonly number[];
}

export interface AccessProblem {
  readonly parts: PartSizes;
  readonly moves: readonly Move[];
  /** Stances that no move may lead into and in which nothing is done. */
  readonly nevers: readonly StanceSet[];
  /** Seconds of walking from place to place, closed (no detour is shorter) and symmetric, 0 from a place to itself; `Infinity` where there is no way. */
  readonly walk: readonly (readonly number[])[];
  readonly needs: readonly Need[];
  readonly start: { readonly stance: Stance; readonly place: number | null };
  /** Where each part must end; `null`: anywhere. */
  readonly goal: readonly (number | null)[];
}

/** What a person does, in order. Walking is not listed: it follows from the places. */
export type Act = { readonly kind: 'move'; readonly move: number } | { readonly kind: 'need'; readonly need: number };

/** How much the search may use before it settles for what it has. */
export interface SearchCaps {
  /** States whose successors may be looked at; of a machine on which sixteen steps or more can mostly be done next, fewer. */
  readonly expanded: number;
  /** States that may be held in memory, each some 70 bytes; a stance that is new among them counts as three more. */
  readonly held: number;
}

/** What a search may use unless told otherwise: about a second, and some 50 MB. */
export const DEFAULT_CAPS: SearchCaps = { expanded: 250_000, held: 600_000 };

export type SearchOutcome =
  /** `acts` costs `seconds`, and nothing costs less. */
  | { readonly kind: 'optimal'; readonly acts: readonly Act[]; readonly seconds: number; readonly expanded: number }
  /** A cap was reached: `acts` costs `seconds`, and nothing costs less than `atLeast`. */
  | {
      readonly kind: 'bounded';
      readonly acts: readonly Act[];
      readonly seconds: number;
      readonly atLeast: number;
      readonly expanded: number;
    }
  /** There is no way, and that is proved. */
  | { readonly kind: 'impossible'; readonly expanded: number }
  /** A cap was reached before any way was found. */
  | { readonly kind: 'undecided'; readonly atLeast: number; readonly expanded: number };
