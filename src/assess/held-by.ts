import type { Hold, TaskAssessment, Verdict } from './assessment.js';
import type { World } from './world.js';

/**
 * What holds make of the verdict on the machine (docs/meaning.md §8): held, where one is certain; cannot tell, where one that is not would not be
 * settled by doing what is due; else nothing.
 */
export function heldBy(world: World, tasks: readonly TaskAssessment[], holds: readonly Hold[]): Verdict | null {
  if (holds.some((hold) => hold.truth === 'true')) return 'held';
  const due = new Set(tasks.filter(({ state }) => state === 'due' || state === 'overdue').map(({ task }) => task));
  const settled = readBy(world, due);
  return holds.every((hold) => isSettled(hold, due, settled)) ? null : 'cannot-tell';
}

/** The instruments that the due tasks read: doing them settles what is unknown about those. */
function readBy(world: World, due: ReadonlySet<string>): ReadonlySet<string> {
  const instruments = new Set<string>();
  for (const task of world.index.graph.tasks) {
    world.step();
    if (due.has(task.id)) for (const reads of task.reads) instruments.add(reads.instrument.id);
  }
  return instruments;
}

function isSettled({ why, missing }: Hold, due: ReadonlySet<string>, settled: ReadonlySet<string>): boolean {
  if (why.is === 'late') return due.has(why.task);
  return missing.length > 0 && missing.every((each) => each.what === 'reading' && settled.has(each.instrument));
}
