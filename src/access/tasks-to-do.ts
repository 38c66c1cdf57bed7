/**
 * Which tasks a walk-round has to do when some are asked for: what another covers is not done twice, and what must come first and
 * has no time of its own comes along.
 */
import type { RuleGraph, Task } from '../graph/rule-graph.js';

export interface TasksToDo {
  /** In the order of the schedule. */
  readonly tasks: readonly Task[];
  /** Task → those asked for that count as done with it. */
  readonly covered: ReadonlyMap<string, readonly string[]>;
  /** Task that was not asked for → the one that must follow it. */
  readonly broughtBy: ReadonlyMap<string, string>;
  /** For each task, by index in `tasks`, what must come before it. */
  readonly after: readonly (readonly number[])[];
  /** Asked for, but not in the schedule. */
  readonly unknown: readonly string[];
}

export function tasksToDo(graph: RuleGraph, asked: readonly string[]): TasksToDo {
  const byId = new Map(graph.tasks.map((task) => [task.id, task]));
  const chosen = new Set(asked);
  const broughtBy = new Map<string, string>();
  for (const id of chosen) {
    for (const first of byId.get(id)?.follows ?? []) {
      const task = byId.get(first);
      if (task === undefined || task.trigger !== undefined || chosen.has(first)) continue;
      chosen.add(first);
      broughtBy.set(first, id);
    }
  }
  const stands = standIns(graph, chosen);
  const tasks = graph.tasks.filter((task) => chosen.has(task.id) && !stands.has(task.id));
  const covered = new Map<string, string[]>();
  for (const [id, by] of stands) for (const each of by) covered.set(each, [...(covered.get(each) ?? []), id]);
  const places = new Map(tasks.map((task, index) => [task.id, index]));
  return {
    tasks,
    covered,
    broughtBy,
    after: tasks.map((task) => orderOf(task, places, stands)),
    unknown: asked.filter((id) => !byId.has(id)),
  };
}

/** Task that need not be done itself → the chosen ones by which it counts as done. */
function standIns(graph: RuleGraph, chosen: ReadonlySet<string>): ReadonlyMap<string, readonly string[]> {
  const stands = new Map<string, readonly string[]>();
  const own = (id: string): boolean => chosen.has(id) && !stands.has(id);
  for (const task of graph.tasks) {
    if (!own(task.id)) continue;
    for (const covered of task.covers) if (covered !== task.id && own(covered)) stands.set(covered, [task.id]);
  }
  for (const task of graph.tasks) {
    if (own(task.id) && task.metBy.length > 0 && task.metBy.every(own)) stands.set(task.id, task.metBy);
  }
  return stands;
}

/** What a task follows, and what any task that it stands in for follows: all of it must be done before. */
function orderOf(task: Task, places: ReadonlyMap<string, number>, stands: ReadonlyMap<string, readonly string[]>): readonly number[] {
  const before = new Set(task.follows.flatMap((id) => stands.get(id) ?? [id]));
  before.delete(task.id);
  return [...before].flatMap((id) => places.get(id) ?? []);
}
