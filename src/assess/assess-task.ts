import type { Task } from '../graph/rule-graph.js';
import type { Hold, Missing, Observation, TaskAssessment } from './assessment.js';
import { carried, type Holding } from './kinds.js';
import { quiet, type Reach } from './reach.js';
import { evaluate } from './trigger.js';
import type { World } from './world.js';

export interface TaskResult {
  readonly assessment: TaskAssessment;
  readonly holds: readonly Hold[];
  readonly notices: Holding['notices'];
  readonly record: readonly Observation[];
}

const NOTHING: Holding = { holds: [], notices: [] };

/** Assesses one task: whether it applies, what its triggers came to, and what its readings hold. */
export function assessTask(world: World, task: Task): TaskResult {
  world.task = task.id;
  world.step();
  const { aspects } = world.kinds;
  const off = restsBecause(world, task);
  const gate = off !== null || task.gate === undefined ? null : carried(aspects, 'gate')(world, task.gate);
  const resting = gate?.truth === 'false' ? 'gate' : off;
  if (resting !== null) return { ...NOTHING, assessment: rest(task, resting), record: withEnds(world, world.takeRecord()) };
  const doubt = gate?.truth === 'unknown' ? gate.missing : null;
  const reach = task.trigger === undefined ? quiet(-1) : evaluate(world, task.trigger, { task: task.id, fromStart: true, evaluate });
  const { holds, notices } = task.reads.length === 0 ? NOTHING : carried(aspects, 'reads')(world, task);
  const record = world.takeRecord();
  const whole = task.metBy.length === 0 ? record : carried(aspects, 'metBy').record(world, task, record);
  return {
    assessment: summary(task, reach, doubt),
    holds: [...holds, ...lateHolds(task, reach, doubt)],
    notices,
    record: withEnds(world, whole),
  };
}

/** Only rules on what begins and ends have something to add; the kinds that have such rules carry what adds it. */
function withEnds(world: World, record: readonly Observation[]): readonly Observation[] {
  return world.kinds.aspects.ends?.(world, record) ?? record;
}

function restsBecause(world: World, task: Task): 'attachment-off' | 'serial' | null {
  const { serial } = world.timeline.machine;
  if (task.serial !== undefined && serial !== null && (serial < task.serial.from || serial > task.serial.to)) return 'serial';
  if (task.attachment === undefined) return null;
  return carried(world.kinds.aspects, 'attached')(world, task.attachment).truth === 'true' ? null : 'attachment-off';
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
