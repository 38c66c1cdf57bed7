import type { RuleGraph } from '../graph/rule-graph.js';
import { scheduleNames } from '../history/schedule-names.js';
import type { GraphIndex } from './world.js';

/** The index of a graph; what is in it is kept for as long as the graph is. */
export function indexGraph(graph: RuleGraph): GraphIndex {
  return { graph, ...scheduleNames(graph) };
}
