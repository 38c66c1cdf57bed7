import { partsOf } from './node-references.js';
import type { NodeId, RuleGraph } from './rule-graph.js';

/** Tasks that come with work, each day, outing or shift, whatever else may ask for them: they are done anyway. */
export function tasksOfWork({ tasks, nodes }: Pick<RuleGraph, 'tasks' | 'nodes'>): ReadonlySet<string> {
  const isOfWork = (id: NodeId): boolean => {
    const node = nodes[id];
    if (node === undefined) return false;
    if (node.kind === 'shortly-before') return true;
    return node.kind === 'occasion' ? node.of !== 'storage' : partsOf(node).some(isOfWork);
  };
  return new Set(tasks.flatMap(({ id, trigger }) => (trigger !== undefined && isOfWork(trigger) ? [id] : [])));
}
