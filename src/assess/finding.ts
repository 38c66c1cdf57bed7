/** What a condition comes to, and how the conditions that need no others say it. */
import type { EntryId } from '../history/entry.js';
import type { Moment } from '../values/moment.js';
import type { DuePoint, Missing, Note, Truth } from './assessment.js';

/** What a condition came to. */
export interface Finding {
  readonly truth: Truth;
  /** The newest thing on record that makes it so; `null` if nothing on record does (it was always so, or nobody knows). */
  readonly evidence: Moment | null;
  readonly entries: readonly EntryId[];
  readonly missing: readonly Missing[];
  readonly note?: Note;
  /** The values of an axis that it was worked out from. */
  readonly stood?: readonly DuePoint[];
}

/** A finding that nothing more needs saying of. */
export function found(truth: boolean, evidence: Moment | null, entries: readonly EntryId[], note?: Note): Finding {
  return { truth: truth ? 'true' : 'false', evidence, entries, missing: [], ...(note === undefined ? {} : { note }) };
}

/** A finding that cannot be made. */
export function unknown(missing: Missing, evidence: Moment | null = null, entries: readonly EntryId[] = []): Finding {
  return { truth: 'unknown', evidence, entries, missing: [missing] };
}
