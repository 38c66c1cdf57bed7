import type { Task } from '../graph/rule-graph.js';
import type { Observation, TaskAssessment } from './assessment.js';
import { asksFor, carried, type Holding } from './kinds.js';
import { quiet } from './reach.js';
import { evaluate } from './trigger.js';
import type { World } from './world.js';

/** What a task came to, and what it holds and cautions of. */
export interface Judged extends Holding {
  readonly assessment: TaskAssessment;
}

export interface TaskResult extends Judged {
  readonly record: readonly Observation[];
}

/** Whether a task applies, and what it comes to besides its rules: `within` judges it by what stands within, and is not asked where it rests. */
export type Around = (world: World, task: Task, within: () => Judged) => Judged;

/** What can stand around the rules of a task, from without. */
const AROUND = ['reads', 'serial', 'attachment', 'gate'] as const;

/** Assesses one task: whether it applies, what its triggers came to, and what its readings hold. */
export function assessTask(world: World, task: Task): TaskResult {
  world.task = task.id;
  world.step();
  const { aspects } = world.kinds;
  const judged = judgedWithin(world, task, AROUND);
  const record = world.takeRecord();
  const isWhole = asksFor(task, 'metBy') && judged.assessment.resting === null;
  const whole = isWhole ? carried(aspects, 'metBy').record(world, task, record) : record;
  // Only rules on what begins and ends have something to add; the kinds that have such rules carry what adds it.
  return { ...judged, record: aspects.ends?.(world, whole) ?? whole };
}

function judgedWithin(world: World, task: Task, [outer, ...inner]: readonly (typeof AROUND)[number][]): Judged {
  if (outer === undefined) return judgedByRules(world, task);
  const within = (): Judged => judgedWithin(world, task, inner);
  return asksFor(task, outer) ? carried(world.kinds.aspects, outer)(world, task, within) : within();
}

function judgedByRules(world: World, task: Task): Judged {
  const reach = task.trigger === undefined ? quiet(-1) : evaluate(world, task.trigger, { task: task.id, fromStart: true, evaluate });
  const { state, due, governing, left, missing } = reach;
  return {
    assessment: { task: task.id, state, due, governing: governing < 0 ? null : governing, left, missing, resting: null },
    holds: reach.stops.length === 0 ? [] : carried(world.kinds.aspects, 'hold').holds(task, reach),
    notices: [],
  };
}
