/**
 * What a rule looks at, and what a rule is.
 */
import type { Patience } from '../base/near-name.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { DeclarationNode, HeaderNode, TaskNode } from '../syntax/tree.js';
import type { TaskLimit } from './limits.js';
import type { Model, Reference } from './model.js';
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
  /** The names that a declaration uses. */
  readonly referencesOf: (node: DeclarationNode) => readonly Reference[];
  /** Tasks that say something about their limits (allowances, leads, holds, counting), each with all of them. */
  readonly limits: () => readonly { readonly node: TaskNode; readonly limits: readonly TaskLimit[] }[];
  /** False where some of the text could not be read: then what seems to be missing may be there. */
  readonly whole: boolean;
  /** False where a file that the schedule is made of could not be opened: then a name that is not declared may be declared there. */
  readonly complete: boolean;
  /** How many more names may be compared to find the one that was meant. */
  readonly patience: Patience;
}

/** One thing that is wrong in a schedule, and how it is told. */
export interface Rule {
  /** Every code that it can report. */
  readonly codes: readonly CheckCode[];
  /**
   * `declaration`: what it says of one declaration follows from that declaration and what the names in it mean (and on which meters there
   * are), so it is asked of each by itself, and not again while those stay as they are. `schedule`: it looks at all together.
   */
  readonly scope: 'declaration' | 'schedule';
  readonly check: (context: CheckContext) => readonly Diagnostic[];
}
