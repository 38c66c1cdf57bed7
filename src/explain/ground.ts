import type { Explanation, RuleFacts } from './explanation.js';
import type { ScheduleOutline, TaskOutline } from './outline.js';
import type { Standing } from './standing.js';

/** What the changes that would alter a task's state are worked out from. */
export interface Ground {
  readonly schedule: ScheduleOutline;
  readonly outline: TaskOutline;
  readonly standing: Standing;
  readonly rule: RuleFacts | null;
  readonly gate: RuleFacts | null;
  readonly state: Explanation['state'];
}
