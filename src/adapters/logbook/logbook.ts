/**
 * A logbook as it was read: entries for the engine, and everything that a careful reader noticed about the text.
 */
import type { Entry, EntryId } from '../../engine.js';

/** Where a line stands: line numbers count from 1. */
export type LogbookLine =
  /** Written by this software, covered by its hash. */
  | {
      readonly kind: 'chained';
      readonly line: number;
      readonly text: string;
      readonly entry: Entry | null;
      readonly seq: number;
      readonly hash: string;
      readonly accepts: readonly number[];
    }
  /** Written by hand or elsewhere: counts, and is covered by the next chained line. */
  | { readonly kind: 'plain'; readonly line: number; readonly text: string; readonly entry: Entry | null };

/** Something about the text that a person should know. Nothing of it is ever dropped from the file. */
export type LogbookProblem =
  /** Not JSON, or JSON that is no entry: kept in the file, not used. */
  | { readonly kind: 'unreadable'; readonly line: number; readonly what: string }
  /** The hash does not fit what stands here: the line, or something before it back to the last chained line, was changed. */
  | { readonly kind: 'changed'; readonly line: number; readonly acceptedAt: number | null }
  /** Fits an earlier line instead: two copies that grew apart were laid one after the other. Nothing was changed. */
  | { readonly kind: 'fork'; readonly line: number; readonly from: number }
  /** The hash fits but the number does not follow. */
  | { readonly kind: 'misnumbered'; readonly line: number; readonly expected: number; readonly acceptedAt: number | null }
  /** The same id again with other content: both are kept, the later line under the id `kept`. */
  | { readonly kind: 'same-id'; readonly line: number; readonly id: EntryId; readonly kept: EntryId }
  /** A member that no entry of this kind has: kept in the file, not used. `meant`: a name that it is near to. */
  | { readonly kind: 'strange-member'; readonly line: number; readonly name: string; readonly meant: string | null }
  /** The last line was not written to its end and was never acknowledged; the next append sets it aside. */
  | { readonly kind: 'torn-tail'; readonly line: number; readonly bytes: number };

/** The last link of the chain: note it elsewhere, and even a cut-off end will show. */
export interface ChainHead {
  readonly seq: number;
  readonly hash: string;
}

/** A logbook that is open: what stands in it, and a way to add to it. */
export interface Logbook {
  /** In the order of the file; the engine orders them by when they happened. */
  readonly entries: readonly Entry[];
  readonly lines: readonly LogbookLine[];
  readonly problems: readonly LogbookProblem[];
  /** `null` while nothing is chained. */
  readonly head: ChainHead | null;
  /** The lines since the last chained one, which the next chained line will cover. */
  readonly uncovered: readonly string[];
}
