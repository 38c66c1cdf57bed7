import type { Assessment, TaskAssessment, Verdict } from '../assess/assessment.js';

/** What is different between two assessments of one machine, as far as states go. */
export interface Turn {
  readonly tasks: readonly { readonly task: string; readonly before: TaskAssessment; readonly after: TaskAssessment }[];
  readonly verdict: { readonly before: Verdict; readonly after: Verdict } | null;
  /** A hold or a caution came or went, or became certain. */
  readonly holds: boolean;
}

/** `null` if no state, verdict, hold or caution differs. */
export function turnBetween(before: Assessment, after: Assessment): Turn | null {
  const tasks = after.tasks.flatMap((task, i) => {
    const old = before.tasks[i];
    return old === undefined || (old.state === task.state && old.resting === task.resting)
      ? []
      : [{ task: task.task, before: old, after: task }];
  });
  const verdict = before.verdict === after.verdict ? null : { before: before.verdict, after: after.verdict };
  const holds = signs(before) !== signs(after);
  return tasks.length === 0 && verdict === null && !holds ? null : { tasks, verdict, holds };
}

function signs({ holds, notices }: Assessment): string {
  return JSON.stringify([holds.map(({ why, truth }) => [why, truth]), notices.map(({ from, text }) => [from, text])]);
}
