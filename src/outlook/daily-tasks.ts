import type { Node, NodeId, RuleGraph } from '../graph/rule-graph.js';

/** Tasks that come with work, each day or each outing: they are done anyway, and no visit is planned for them. */
export function dailyTasks(graph: Pick<RuleGraph, 'tasks' | 'nodes'>): ReadonlySet<string> {
  return new Set(graph.tasks.filter(({ trigger }) => trigger !== undefined && comesWithWork(trigger, graph.nodes)).map(({ id }) => id));
}

function comesWithWork(id: NodeId, nodes: readonly Node[]): boolean {
  const node = nodes[id];
  if (node?.kind === 'occasion') return node.of !== 'storage';
  return node?.kind === 'any' && node.parts.some((part) => comesWithWork(part, nodes));
}
