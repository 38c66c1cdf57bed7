/**
 * What a check of the compiled graph finds.
 */
import type { Code } from '../diagnostics/catalogue-entry.js';
import type { Origin, RuleGraph } from '../graph/rule-graph.js';

/** What a check of the graph found, at the place where the graph says that a thing was written. */
export interface GraphFinding {
  readonly entry: Code;
  /** One sentence, no line break; the user's own names in backticks. */
  readonly message: string;
  readonly at: Origin;
  readonly labels?: readonly { readonly at: Origin; readonly text: string }[];
  readonly help?: string;
}

export type GraphCheck = (graph: RuleGraph) => readonly GraphFinding[];
