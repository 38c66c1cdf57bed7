import type { DependenceNode, NameNode, TaskNode } from '../syntax/tree.js';
import { clausesOf } from './clauses-of.js';
import type { Model } from './model.js';

/** A task where another names it. */
export interface NamedTask {
  readonly name: NameNode;
  readonly task: TaskNode;
}

/** The tasks that a task names in its clauses of one kind, as written; names of anything else are left out. */
export function tasksNamed(model: Model, { clauses }: TaskNode, kind: DependenceNode['kind']): readonly NamedTask[] {
  return clausesOf(clauses, kind).flatMap(({ names }) => names.flatMap((name) => taskNamed(model, name)));
}

/** The task that a name means; none where it means anything else. */
export function taskNamed(model: Model, name: NameNode): readonly NamedTask[] {
  const node = model.meaning.get(name)?.node;
  return node?.kind === 'task' ? [{ name, task: node }] : [];
}
