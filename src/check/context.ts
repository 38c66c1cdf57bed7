/**
 * What a rule looks at, and what a rule is.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { HeaderNode } from '../syntax/tree.js';
import type { Model } from './model.js';
import type { NameTable } from './names.js';
import type { CheckCode } from './report.js';
import type { NodeIndex } from './walk.js';

export interface CheckContext {
  readonly model: Model;
  readonly table: NameTable;
  /** Headers of all files, the first one's first. */
  readonly headers: readonly HeaderNode[];
  /** Every node of every header and declaration, by kind. */
  readonly nodes: NodeIndex;
  /** False where some of the text could not be read: then what seems to be missing may be there. */
  readonly whole: boolean;
}

/** One thing that is wrong in a schedule, and how it is told. */
export interface Rule {
  /** Every code that it can report. */
  readonly codes: readonly CheckCode[];
  readonly check: (context: CheckContext) => readonly Diagnostic[];
}
