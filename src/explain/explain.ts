/**
 * Why a task is in the state it is in: read from the record of the run (docs/meaning.md §9).
 */
import type { Assessment } from '../assess/assessment.js';
import type { RuleGraph } from '../graph/rule-graph.js';
import type { Entry } from '../history/entry.js';
import type { Explanation, Names } from './explanation.js';
import { forecastOf } from './forecast.js';
import { namedIn } from './names.js';
import { nearestChanges } from './nearest-changes.js';
import { type Reasons, reasonsOf } from './reasons.js';
import { type Run, runsOf } from './run.js';
import { subjectOf } from './unknowns.js';

/** What `explain` may be given besides the assessment. */
export interface ExplainOptions {
  /** Meter id → ticks a day, as given to `assess`: with it the explanation tells about when each part is reached. */
  readonly rates?: ReadonlyMap<string, number>;
}

/**
 * The explanation of one task.
 *
 * Nothing is assessed again: states, numbers and entries are those that `assess` recorded, so that the assessment must have been
 * made with its record. `entries` is the history that was assessed; entries are looked up there by id.
 *
 * @throws RangeError if the assessment has no such task, or none of its record.
 * @example explain(graph, assess(graph, entries, now), entries, 'change-engine-oil').state // 'due'
 */
export function explain(
  graph: RuleGraph,
  assessment: Assessment,
  entries: readonly Entry[],
  taskId: string,
  options: ExplainOptions = {},
): Explanation {
  return explainer(graph, assessment, entries, options)(taskId);
}

/**
 * As {@link explain}, for several tasks of one assessment: the history is gone through once, and not for each of them.
 *
 * @example
 * const why = explainer(graph, assessment, entries);
 * for (const { task } of assessment.tasks) show(why(task));
 */
export function explainer(
  graph: RuleGraph,
  assessment: Assessment,
  entries: readonly Entry[],
  options: ExplainOptions = {},
): (taskId: string) => Explanation {
  const runOf = runsOf(graph, assessment, entries);
  return (taskId) => explainTask(runOf(taskId), options);
}

function explainTask(run: Run, options: ExplainOptions): Explanation {
  const { state, due, left, resting, governing } = run.assessed;
  const { now } = run.assessment;
  const reasons = reasonsOf(run);
  const { rule, gate, others, entries, unknown, holds, notices } = reasons;
  return {
    format: 'duewright-explanation',
    version: 1,
    schedule: run.schedule.schedule,
    now,
    task: run.outline.told,
    state,
    due,
    left,
    resting,
    rule,
    gate,
    governing,
    others,
    entries,
    unknown,
    holds,
    notices,
    changes: nearestChanges(run, reasons),
    forecast: rule === null ? null : forecastOf(rule, run.assessed, now, options.rates),
    names: namesFor(run, reasons),
  };
}

/** What words are made with: names of what the rules mention, and of what the entries and other findings do. */
export function namesFor({ schedule, outline, history }: Run, { entries, unknown, holds, notices }: Reasons): Names {
  let all = outline.names;
  for (const { id } of entries) all = all.with(history.get(id)?.names ?? []);
  for (const { missing } of unknown) all = all.with(schedule.names.get(subjectOf(missing)) ?? []);
  for (const found of [holds, notices]) if (found.length > 0) all = all.with(namedIn(found, schedule.names));
  return all.names;
}
