/**
 * What is kept about a diagnostic code: one entry per code, from which docs/diagnostics.md is made.
 */
import type { Severity } from '../diagnostic.js';

export interface CatalogueEntry {
  /** Stable for ever: a code is never used again for something else. */
  readonly code: string;
  readonly severity: Severity;
  /** A few words, as a heading. */
  readonly title: string;
  /** Why it matters and what to do, in plain sentences. */
  readonly explanation: string;
  /** A piece of a schedule that draws it, and the piece put right. */
  readonly wrong: string;
  readonly right: string;
}
