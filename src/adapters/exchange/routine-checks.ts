import { addTo } from '../../base/gather.js';
import { tasksOfWork, type RuleGraph } from '../../engine.js';
import type { Moment } from '../../values/moment.js';
import { editionOf, type RecordedWork, type ServiceRecord } from './service-record.js';

/** A check that comes round with the work itself, summed up: what a reader of the record wants to know of it. */
export interface RoutineCheck {
  readonly task: string;
  readonly title: string;
  readonly times: number;
  readonly days: number;
  readonly first: Moment;
  readonly last: Moment;
}

/**
 * Parts the record into what is read line by line and the checks of each day's work that went as they should, which are summed up: two
 * years of them would fill a hundred pages. A check that was late, voided, noted upon, or that used something stays a line of its own.
 *
 * Law: the lines and the times of the checks add up to the work on record.
 */
export function foldRoutine(record: ServiceRecord): { readonly lines: readonly RecordedWork[]; readonly checks: readonly RoutineCheck[] } {
  const routine = new Map<RuleGraph, ReadonlySet<string>>();
  const folded = new Map<string, RecordedWork[]>();
  const lines = record.work.filter((work) => {
    const graph = editionOf(record, work);
    const tasks = routine.get(graph) ?? tasksOfWork(graph);
    routine.set(graph, tasks);
    if (!tasks.has(work.task) || !isPlain(work)) return true;
    addTo(folded, work.task, work);
    return false;
  });
  return { lines, checks: [...folded.values()].flatMap(sumUp) };
}

/** Nothing to say of it beyond that it was done. */
function isPlain({ timing, voided, note, used }: RecordedWork): boolean {
  return timing.is !== 'late' && voided === null && note === null && Object.keys(used).length === 0;
}

function sumUp(work: readonly RecordedWork[]): readonly RoutineCheck[] {
  const [first, last] = [work[0], work.at(-1)];
  if (first === undefined || last === undefined) return [];
  const days = new Set(work.map(({ when }) => when.day)).size;
  return [{ task: last.task, title: last.title, times: work.length, days, first: first.when, last: last.when }];
}
