import { type Node, type NodeId, partsOf, type RuleGraph, type Task } from '../../engine.js';

/** What `duewright rules --json` answers: a task and every node that its rules are made of, parts before wholes. */
export interface TaskRules {
  readonly format: 'duewright-task-rules';
  readonly version: 1;
  readonly schedule: { readonly name: string; readonly fingerprint: string };
  readonly task: Task;
  readonly nodes: readonly Node[];
}

/** Cuts the rules of one task out of the graph. */
export function taskRules(graph: RuleGraph, task: Task): TaskRules {
  const wanted = new Set([task.trigger, task.gate, task.stance].filter((id) => id !== undefined));
  // Parts have lower ids than wholes, so one pass from the top down meets every whole before its parts.
  for (const node of graph.nodes.toReversed()) {
    if (wanted.has(node.id)) for (const part of partsOf(node)) wanted.add(part);
  }
  return {
    format: 'duewright-task-rules',
    version: 1,
    schedule: { name: graph.schedule.name, fingerprint: graph.fingerprint },
    task,
    nodes: graph.nodes.filter(({ id }: { id: NodeId }) => wanted.has(id)),
  };
}
