/** Which due points of a machine in the field move from one edition to the next. */
import { assess } from '../assess/assess.js';
import type { DuePoint, TaskAssessment } from '../assess/assessment.js';
import type { Entry } from '../history/entry.js';
import type { Moment } from '../values/moment.js';
import type { Editions } from './compare-task.js';
import type { Move, TaskComparison } from './comparison.js';

/** A machine's logbook, with a name to tell it by. */
export interface LoggedMachine {
  readonly name: string;
  readonly entries: readonly Entry[];
}

/** The tasks whose state or due point differs between the editions for this machine, in the new edition's order. */
export function movesOf(machine: LoggedMachine, graphs: Editions, now: Moment, tasks: readonly TaskComparison[]): readonly Move[] {
  const old = byTask(assess(graphs.before, machine.entries, now, { withoutRecord: true }).tasks);
  const fresh = byTask(assess(graphs.after, machine.entries, now, { withoutRecord: true }).tasks);
  const why = new Map(tasks.map((task) => [task.task, task.changes]));
  return [...new Set([...fresh.keys(), ...old.keys()])].flatMap((task): readonly Move[] => {
    const [before, after] = [sideOf(old.get(task)), sideOf(fresh.get(task))];
    if (before.state === after.state && samePoint(before.due, after.due)) return [];
    return [{ machine: machine.name, task, before, after, by: distance(before.due, after.due), why: why.get(task) ?? [] }];
  });
}

function byTask(tasks: readonly TaskAssessment[]): ReadonlyMap<string, TaskAssessment> {
  return new Map(tasks.map((task) => [task.task, task]));
}

function sideOf(task: TaskAssessment | undefined): Move['before'] {
  return task === undefined ? { state: 'absent', due: null } : { state: task.state, due: task.due };
}

function samePoint(a: DuePoint | null, b: DuePoint | null): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

/** after − before, where both lie on one axis. */
function distance(before: DuePoint | null, after: DuePoint | null): number | null {
  if (before?.on === 'calendar' && after?.on === 'calendar') return after.day - before.day;
  if (before?.on === 'meter' && after?.on === 'meter' && before.meter === after.meter) return after.ticks - before.ticks;
  return before?.on === 'work' && after?.on === 'work' && before.duty === after.duty ? after.ticks - before.ticks : null;
}
