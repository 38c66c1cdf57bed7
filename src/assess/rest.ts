import type { Task } from '../graph/rule-graph.js';
import type { Judged } from './assess-task.js';
import type { TaskAssessment } from './assessment.js';

/** A task that does not apply: nothing is asked of it, and it holds nothing. */
export function rest({ id }: Task, resting: NonNullable<TaskAssessment['resting']>): Judged {
  const assessment: TaskAssessment = { task: id, state: 'resting', due: null, governing: null, left: null, missing: [], resting };
  return { assessment, holds: [], notices: [] };
}
