import type { RuleGraph } from '../graph/rule-graph.js';
import type { GraphIndex } from './world.js';

const indexes = new WeakMap<RuleGraph, GraphIndex>();

/** The index of a graph, made once and kept for as long as the graph is (a pure function of it). */
export function indexGraph(graph: RuleGraph): GraphIndex {
  const known = indexes.get(graph);
  if (known !== undefined) return known;
  const index: GraphIndex = {
    graph,
    tasks: byId(graph.tasks),
    meters: byId(graph.meters),
    gauges: byId(graph.gauges),
    dipsticks: byId(graph.dipsticks),
    defects: byId(graph.defects),
    attachments: byId(graph.attachments),
    coveredBy: reversed(graph, (task) => task.covers),
    restartedBy: reversed(graph, (task) => task.restarts),
  };
  indexes.set(graph, index);
  return index;
}

function byId<T extends { readonly id: string }>(things: readonly T[]): ReadonlyMap<string, T> {
  return new Map(things.map((thing) => [thing.id, thing]));
}

function reversed(
  graph: RuleGraph,
  targets: (task: RuleGraph['tasks'][number]) => readonly string[],
): ReadonlyMap<string, readonly string[]> {
  const sources = new Map<string, string[]>();
  for (const task of graph.tasks) {
    for (const target of targets(task)) {
      const list = sources.get(target);
      if (list === undefined) sources.set(target, [task.id]);
      else list.push(task.id);
    }
  }
  return sources;
}
