import type { RuleGraph } from '../graph/rule-graph.js';
import type { RuleFacts } from './explanation.js';
import type { Standing } from './standing.js';

/** What the changes that would alter a task's state are worked out from. */
export interface Ground {
  readonly graph: RuleGraph;
  readonly standing: Standing;
  readonly rule: RuleFacts | null;
  readonly gate: RuleFacts | null;
}
