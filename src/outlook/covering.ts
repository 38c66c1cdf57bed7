import type { RuleGraph } from '../graph/rule-graph.js';
import type { PlannedWork } from './supplies-needed.js';

/** Task → the tasks that cover it, through others as well. */
export type CoveringTasks = ReadonlyMap<string, ReadonlySet<string>>;

/** Which tasks of a graph do which others along with them. */
export function coveringTasks({ tasks }: Pick<RuleGraph, 'tasks'>): CoveringTasks {
  const covers = new Map(tasks.map((task) => [task.id, task.covers]));
  const by = new Map<string, Set<string>>();
  for (const { id } of tasks) {
    const reached = new Set<string>();
    const open = [...(covers.get(id) ?? [])];
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      if (next === id || reached.has(next)) continue;
      reached.add(next);
      open.push(...(covers.get(next) ?? []));
      by.set(next, (by.get(next) ?? new Set()).add(id));
    }
  }
  return by;
}

/** Of some tasks that are done together, those that none of the others does along with itself. */
export function uncovered(ids: readonly string[], covering: CoveringTasks): readonly string[] {
  return ids.filter((id) => {
    const by = covering.get(id);
    return by === undefined || !ids.some((other) => by.has(other));
  });
}

/** Work without what is done along with other work: each doing of a task that covers another saves one of the other. */
export function withoutCovered(work: readonly PlannedWork[], covering: CoveringTasks): readonly PlannedWork[] {
  const planned = new Map(work.map(({ task, times }) => [task, times]));
  const own = new Map<string, number>();
  const timesOf = (task: string): number => {
    const known = own.get(task);
    if (known !== undefined) return known;
    // Of tasks that cover each other in a circle none saves another.
    own.set(task, 0);
    const saved = [...(covering.get(task) ?? [])].reduce((sum, other) => sum + (planned.has(other) ? timesOf(other) : 0), 0);
    const times = Math.max(0, (planned.get(task) ?? 0) - saved);
    own.set(task, times);
    return times;
  };
  return work.map(({ task }) => ({ task, times: timesOf(task) })).filter(({ times }) => times > 0);
}
