import type { NodeId } from '../graph/rule-graph.js';
import type { Reach } from './reach.js';
import type { World } from './world.js';

/** What a trigger is told beside its own node. */
export interface TriggerContext {
  readonly task: string;
  /** Whether the machine's start may serve as the base of a repeating limit. */
  readonly fromStart: boolean;
  /** Evaluates a part; given, so that a trigger made of others need not import the file that imports it. */
  readonly evaluate: (world: World, id: NodeId, context: TriggerContext) => Reach;
}
