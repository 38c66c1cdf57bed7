import type { RuleGraph } from '../graph/rule-graph.js';

/** What is needed of one supply, and what of that is there. */
export interface SupplyNeeded {
  readonly supply: string;
  readonly title: string;
  /** `null`: counted in pieces. */
  readonly unit: string | null;
  readonly needed: number;
  readonly onShelf: number;
  /** needed − on the shelf, at least 0. */
  readonly missing: number;
  /** Task → how much of it the task takes in all. */
  readonly for: readonly { readonly task: string; readonly amount: number }[];
}

/** All that some work takes. */
export interface WorkNeeded {
  readonly supplies: readonly SupplyNeeded[];
  /** Each once, in the order of the tasks. */
  readonly tools: readonly string[];
  /** Minutes of the tasks themselves, without opening up and walking. */
  readonly minutes: number;
  /** Tasks that take no time on record, so that the minutes leave them out. */
  readonly untimed: readonly string[];
}

/** A task and how often it is to be done. */
export interface PlannedWork {
  readonly task: string;
  readonly times: number;
}

/**
 * What a visit or a season takes, less what is on the shelf. Tasks and supplies that the schedule does not have are passed over.
 *
 * Amounts are rounded to a millionth of their unit, so that 0.1 + 0.2 is 0.3.
 *
 * @param shelf supply → how much is there, in the supply's unit.
 */
export function suppliesNeeded(
  graph: Pick<RuleGraph, 'tasks' | 'supplies'>,
  work: readonly PlannedWork[],
  shelf: ReadonlyMap<string, number> = new Map(),
): WorkNeeded {
  const wanted = new Set(work.map(({ task }) => task));
  const tasks = new Map(graph.tasks.filter(({ id }) => wanted.has(id)).map((task) => [task.id, task]));
  const planned = work.flatMap(({ task: id, times }) => {
    const task = tasks.get(id);
    return task === undefined || times <= 0 ? [] : [{ task, times }];
  });
  const supplies = graph.supplies.flatMap(({ id, title, unit }): readonly SupplyNeeded[] => {
    const uses = planned.flatMap(({ task, times }) =>
      task.uses.filter(({ supply }) => supply === id).map(({ amount }) => ({ task: task.id, amount: round(amount * times) })),
    );
    if (uses.length === 0) return [];
    const needed = round(uses.reduce((sum, { amount }) => sum + amount, 0));
    const onShelf = Math.max(0, shelf.get(id) ?? 0);
    return [{ supply: id, title, unit: unit ?? null, needed, onShelf, missing: Math.max(0, round(needed - onShelf)), for: uses }];
  });
  return {
    supplies,
    tools: [...new Set(planned.flatMap(({ task }) => task.site.tools))],
    minutes: round(planned.reduce((sum, { task, times }) => sum + (task.site.seconds / 60) * times, 0)),
    untimed: planned.filter(({ task }) => task.site.seconds === 0).map(({ task }) => task.id),
  };
}

function round(amount: number): number {
  return Math.round(amount * 1e6) / 1e6;
}
