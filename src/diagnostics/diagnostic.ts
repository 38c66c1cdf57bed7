/**
 * What the author is told: one problem, at one place, with a way out.
 */
import type { Span } from '../base/span.js';

/** Whether it keeps a schedule from being compiled. */
export type Severity = 'error' | 'warning' | 'note';

/** How safe it is to apply a fix without asking: `sure` keeps the evident meaning, `likely` is the best guess, `possible` is one of several. */
export type FixGrade = 'sure' | 'likely' | 'possible';

/** A change of the text that puts it right. */
export interface Fix {
  readonly grade: FixGrade;
  /** What applying it does, as an imperative: "Write `engine`". */
  readonly title: string;
  readonly edits: readonly { readonly at: Span; readonly text: string }[];
}

/** What is wrong in a schedule, where, and what helps. */
export interface Diagnostic {
  /** Stable; see the catalogue (`diagnostics/catalogue.ts`) and docs/diagnostics.md. */
  readonly code: string;
  readonly severity: Severity;
  /** One sentence, no line break; the user's own names in backticks. */
  readonly message: string;
  readonly at: Span;
  /** Other places that matter, each with a few words. */
  readonly labels: readonly { readonly at: Span; readonly text: string }[];
  /** What to do, apart from the message. */
  readonly help?: string;
  readonly fixes: readonly Fix[];
}
