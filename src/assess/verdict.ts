import type { Hold, TaskAssessment, TaskState, Verdict } from './assessment.js';
import { carried } from './kinds.js';
import type { World } from './world.js';

/** The machine's verdict (docs/meaning.md §8): what holds make of it; else work due first, or ready. */
export function verdictOf(world: World, tasks: readonly TaskAssessment[], holds: readonly Hold[]): Verdict {
  const held = holds.length === 0 ? null : carried(world.kinds.aspects, 'held')(world, tasks, holds);
  if (held !== null) return held;
  return tasks.some(({ state }) => comesFirst(state)) ? 'work-due-first' : 'ready';
}

/** Whether a task in this state comes before work: it is due, or nothing says that it was ever done. */
export function comesFirst(state: TaskState): boolean {
  return state === 'due' || state === 'overdue' || state === 'unrecorded';
}
