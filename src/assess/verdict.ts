import type { Hold, Missing, TaskAssessment, Verdict } from './assessment.js';
import type { World } from './world.js';

/** The machine's verdict (docs/meaning.md §8): held, cannot tell, work due first, or ready. */
export function verdictOf(world: World, tasks: readonly TaskAssessment[], holds: readonly Hold[]): Verdict {
  if (holds.some((hold) => hold.truth === 'true')) return 'held';
  const due = new Set(tasks.filter((task) => task.state === 'due' || task.state === 'overdue').map((task) => task.task));
  const settled = readBy(world, due);
  if (holds.some((hold) => !isSettled(hold, due, settled))) return 'cannot-tell';
  return tasks.some((task) => task.state === 'due' || task.state === 'overdue' || task.state === 'unrecorded') ? 'work-due-first' : 'ready';
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

function isSettled(hold: Hold, due: ReadonlySet<string>, settled: ReadonlySet<string>): boolean {
  if (hold.why.is === 'late') return due.has(hold.why.task);
  return hold.missing.length > 0 && hold.missing.every((missing: Missing) => missing.what === 'reading' && settled.has(missing.instrument));
}
