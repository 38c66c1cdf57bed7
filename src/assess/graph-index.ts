import type { RuleGraph } from '../graph/rule-graph.js';
import { addTo } from '../base/gather.js';
import { scheduleNames } from '../history/schedule-names.js';
import type { GraphIndex } from './world.js';

const indexes = new WeakMap<RuleGraph, GraphIndex>();

/** The index of a graph, made once and kept for as long as the graph is (a pure function of it). */
export function indexGraph(graph: RuleGraph): GraphIndex {
  const known = indexes.get(graph);
  if (known !== undefined) return known;
  const index: GraphIndex = {
    graph,
    ...scheduleNames(graph),
    coveredBy: reversed(graph, (task) => task.covers),
    restartedBy: reversed(graph, (task) => task.restarts),
  };
  indexes.set(graph, index);
  return index;
}

function reversed(
  graph: RuleGraph,
  targets: (task: RuleGraph['tasks'][number]) => readonly string[],
): ReadonlyMap<string, readonly string[]> {
  const sources = new Map<string, string[]>();
  for (const task of graph.tasks) for (const target of targets(task)) addTo(sources, target, task.id);
  return sources;
}
