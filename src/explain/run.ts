/** What the explanation of one task is read from. */
import type { Assessment, Observation, TaskAssessment } from '../assess/assessment.js';
import type { RuleGraph } from '../graph/rule-graph.js';
import type { Entry } from '../history/entry.js';
import { dayOf } from '../values/civil.js';
import type { Day } from '../values/moment.js';
import { KnownHistory } from './known-history.js';
import { outlineOf, type ScheduleOutline, type TaskOutline } from './outline.js';

/** One task of one run. */
export interface Run {
  readonly schedule: ScheduleOutline;
  readonly outline: TaskOutline;
  readonly assessment: Assessment;
  readonly assessed: TaskAssessment;
  readonly observations: readonly Observation[];
  readonly history: KnownHistory;
  /** Meter id → the last day on which its dial was replaced by an entry whose final value is not believed. */
  readonly unsureDials: ReadonlyMap<string, Day>;
}

/**
 * The tasks of one assessment, by id.
 *
 * @throws RangeError if the assessment has no such task, or none of its record.
 */
export function runsOf(graph: RuleGraph, assessment: Assessment, entries: readonly Entry[]): (taskId: string) => Run {
  const schedule = outlineOf(graph);
  const history = new KnownHistory(entries, assessment.now, schedule.names);
  const unsureDials = unsureDialsOf(assessment.setAside, history);
  const tasks = new Map(assessment.tasks.map((each) => [each.task, each]));
  return (taskId) => {
    const outline = schedule.taskOf(taskId);
    const assessed = tasks.get(taskId);
    const observations = assessment.record[taskId];
    if (outline === null || assessed === undefined) throw new RangeError(`the assessment has no task \`${taskId}\``);
    if (observations === undefined) throw new RangeError(`the assessment has no record of \`${taskId}\``);
    return { schedule, outline, assessment, assessed, observations, history, unsureDials };
  };
}

function unsureDialsOf(setAside: Assessment['setAside'], history: KnownHistory): Run['unsureDials'] {
  const days = new Map<string, Day>();
  for (const { entry: id, suspect } of setAside) {
    const entry = history.byId.get(id);
    if (suspect === undefined || entry?.kind !== 'meter-replaced' || entry.meter !== suspect.meter) continue;
    const day = dayOf(entry.on);
    if (day !== null && day > (days.get(entry.meter) ?? -Infinity)) days.set(entry.meter, day);
  }
  return days;
}
