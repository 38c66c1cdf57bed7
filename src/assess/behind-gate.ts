import type { Around, Judged } from './assess-task.js';
import type { Missing } from './assessment.js';
import { test } from './condition.js';
import { rest } from './rest.js';

/** A task that is asked for only if, or unless, something holds. */
export const behindGate: Around = (world, task, within) => {
  if (task.gate === undefined) return within();
  const { truth, missing } = test(world, task.gate);
  if (truth === 'false') return rest(task, 'gate');
  return truth === 'true' ? within() : inDoubt(within(), missing);
};

/** Behind a gate that cannot be told what is reached is unknown, and no hard stop certain; what is not reached stays what it is. */
function inDoubt({ assessment, holds, notices }: Judged, doubt: readonly Missing[]): Judged {
  const isReached = assessment.state !== 'clear' && assessment.state !== 'coming-up';
  return {
    assessment: isReached ? { ...assessment, state: 'unknown', missing: doubt } : assessment,
    holds: holds.map((hold) => ({ ...hold, truth: 'unknown', missing: [...hold.missing, ...doubt] })),
    notices,
  };
}
