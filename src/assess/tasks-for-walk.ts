import type { RuleGraph } from '../graph/rule-graph.js';
import type { Assessment } from './assessment.js';

/** What a walk-round is made for, and what is wanted but left apart from it, each in the order of the assessment. */
export interface TasksForWalk {
  /** Due or overdue, and nobody's but the owner's. */
  readonly tasks: readonly string[];
  /** Due or overdue, but for a qualified mechanic. */
  readonly mechanic: readonly string[];
  /** Nobody knows whether they are due: there is no record that they were ever done. */
  readonly unrecorded: readonly string[];
}

/**
 * Chooses what is gone round for: what is due or overdue, without what calls for a qualified mechanic and without what has no record.
 * What is left apart is told, so that whoever shows the walk-round can say it: it is no less wanted.
 *
 * @example
 * ```ts
 * const { tasks, mechanic } = tasksForWalk(graph, assess(graph, entries, now, { intent }));
 * const walk = walkRound(graph, tasks, { end: 'work' });
 * ```
 */
export function tasksForWalk(graph: RuleGraph, { tasks }: Pick<Assessment, 'tasks'>): TasksForWalk {
  const qualified = new Set(graph.tasks.flatMap(({ id, site }) => (site.qualified ? [id] : [])));
  const due = tasks.filter(({ state }) => state === 'due' || state === 'overdue').map(({ task }) => task);
  return {
    tasks: due.filter((task) => !qualified.has(task)),
    mechanic: due.filter((task) => qualified.has(task)),
    unrecorded: tasks.filter(({ state }) => state === 'unrecorded').map(({ task }) => task),
  };
}
