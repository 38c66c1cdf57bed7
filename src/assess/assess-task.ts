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
  const judged = judgedWithin(world, task);
  const record = world.takeRecord();
  const whole = asksFor(task, 'metBy') ? carried(aspects, 'metBy').record(world, task, record) : record;
  // Only rules on what begins and ends have something to add; the kinds that have such rules carry what adds it.
  return { ...judged, record: aspects.ends?.(world, whole) ?? whole };
}

/** From the outermost on of what stands around it, of those from `level` on. */
function judgedWithin(world: World, task: Task, level = 0): Judged {
  const at = AROUND.findIndex((aspect, index) => index >= level && asksFor(task, aspect));
  const outer = AROUND[at];
  if (outer === undefined) return judgedByRules(world, task);
  return carried(world.kinds.aspects, outer)(world, task, () => judgedWithin(world, task, at + 1));
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
