import type { Task } from '../graph/rule-graph.js';
import type { Hold, Missing, Observation, TaskAssessment } from './assessment.js';
import { test } from './condition.js';
import { attachmentOn } from './conditions/standing.js';
import { withEnds } from './ended-spells.js';
import { readingHolds } from './holds.js';
import { quiet, type Reach } from './reach.js';
import { evaluate } from './trigger.js';
import { withWholes } from './whole-by-parts.js';
import type { World } from './world.js';

export interface TaskResult {
  readonly assessment: TaskAssessment;
  readonly holds: readonly Hold[];
  readonly notices: ReturnType<typeof readingHolds>['notices'];
  readonly record: readonly Observation[];
}

/** Assesses one task: whether it applies, what its triggers came to, and what its readings hold. */
export function assessTask(world: World, task: Task): TaskResult {
  world.task = task.id;
  world.step();
  const resting = restsBecause(world, task);
  if (resting !== null) return { assessment: rest(task, resting), holds: [], notices: [], record: world.takeRecord() };
  const gate = task.gate === undefined ? null : test(world, task.gate);
  if (gate?.truth === 'false')
    return { assessment: rest(task, 'gate'), holds: [], notices: [], record: withEnds(world, world.takeRecord()) };
  const reach = task.trigger === undefined ? quiet(-1) : evaluate(world, task.trigger, { task: task.id, fromStart: true, evaluate });
  const { holds, notices } = readingHolds(world, task);
  return {
    assessment: summary(task, reach, gate?.truth === 'unknown' ? gate.missing : null),
    holds: [...holds, ...lateHolds(task, reach, gate?.truth === 'unknown' ? gate.missing : null)],
    notices,
    record: withEnds(world, withWholes(world, task, world.takeRecord())),
  };
}

function restsBecause(world: World, task: Task): 'attachment-off' | 'serial' | null {
  const { serial } = world.timeline.machine;
  if (task.serial !== undefined && serial !== null && (serial < task.serial.from || serial > task.serial.to)) return 'serial';
  return task.attachment !== undefined && attachmentOn(world, task.attachment).truth !== 'true' ? 'attachment-off' : null;
}

function rest(task: Task, resting: NonNullable<TaskAssessment['resting']>): TaskAssessment {
  return { task: task.id, state: 'resting', due: null, governing: null, left: null, missing: [], resting };
}

/** A trigger that is reached behind a gate that cannot be told is unknown; one that is not reached stays what it is. */
function summary(task: Task, reach: Reach, gateMissing: readonly Missing[] | null): TaskAssessment {
  const isReached = reach.state !== 'clear' && reach.state !== 'coming-up';
  const state = gateMissing !== null && isReached ? 'unknown' : reach.state;
  return {
    task: task.id,
    state,
    due: reach.due,
    governing: reach.governing < 0 ? null : reach.governing,
    left: reach.left,
    missing: gateMissing !== null && isReached ? gateMissing : reach.missing,
    resting: null,
  };
}

/** Hard stops; behind a gate that cannot be told none is certain. */
function lateHolds(task: Task, reach: Reach, gateMissing: readonly Missing[] | null): readonly Hold[] {
  return reach.stops.map((stop) => ({
    why: { is: 'late', task: task.id, node: stop.node },
    text: stop.text,
    truth: gateMissing === null ? stop.truth : 'unknown',
    entries: stop.entries,
    missing: [...(stop.truth === 'unknown' ? reach.missing : []), ...(gateMissing ?? [])],
  }));
}
