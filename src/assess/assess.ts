import type { RuleGraph } from '../graph/rule-graph.js';
import type { Entry } from '../history/entry.js';
import { readTimeline } from '../history/read-timeline.js';
import type { Timeline } from '../history/timeline.js';
import type { Moment } from '../values/moment.js';
import { assessTask, type TaskResult } from './assess-task.js';
import type { Assessment, AssessOptions, Hold } from './assessment.js';
import { indexGraph } from './graph-index.js';
import { defectHolds, stopHolds } from './holds.js';
import { verdictOf } from './verdict.js';
import { World } from './world.js';

/**
 * Says of every task of a schedule whether it is due, given a history, at a moment (docs/meaning.md).
 *
 * Pure: the same graph, entries (in any order), now and options give the same answer, byte for byte.
 *
 * @param now a civil moment; entries later than it do not count.
 * @throws BudgetError if it takes more steps than `options.budget`.
 * @example assess(graph, entries, { day: dayOf('2026-05-12'), minute: null }).tasks
 */
export function assess(graph: RuleGraph, entries: readonly Entry[], now: Moment, options: AssessOptions = {}): Assessment {
  return assessTimeline(graph, readTimeline(entries, graph, now), now, options);
}

/** As {@link assess}, for a timeline that was read already. */
export function assessTimeline(graph: RuleGraph, timeline: Timeline, now: Moment, options: AssessOptions = {}): Assessment {
  const world = new World(indexGraph(graph), timeline, now, options);
  const stops = stopHolds(world);
  const stopRecord = world.takeRecord();
  const results = graph.tasks.map((task) => assessTask(world, task));
  return composeAssessment(world, { stops, stopRecord, results });
}

/** What the parts of a run came to. */
export interface RunParts {
  readonly stops: readonly Hold[];
  readonly stopRecord: Assessment['stopRecord'];
  /** In the order of the schedule's tasks. */
  readonly results: readonly TaskResult[];
}

/** An assessment from its parts, whether they were worked out in this run or stand from an earlier one. */
export function composeAssessment(world: World, { stops, stopRecord, results }: RunParts): Assessment {
  const { index, now, options, timeline } = world;
  const record: Record<string, Assessment['record'][string]> = Object.create(null) as Record<string, Assessment['record'][string]>;
  if (options.withoutRecord !== true) for (const result of results) record[result.assessment.task] = result.record;
  const defects = defectHolds(world);
  const tasks = results.map((result) => result.assessment);
  const holds = [...stops, ...defects.holds, ...results.flatMap((result) => result.holds)];
  return {
    format: 'duewright-assessment',
    version: 1,
    schedule: { name: index.graph.schedule.name, fingerprint: index.graph.fingerprint },
    now,
    verdict: verdictOf(world, tasks, holds),
    holds,
    notices: [...defects.notices, ...results.flatMap((result) => result.notices)],
    tasks,
    setAside: setAside(timeline),
    record,
    stopRecord,
    steps: world.steps,
  };
}

function setAside(timeline: Timeline): Assessment['setAside'] {
  return [
    ...timeline.suspects.map((suspect) => ({
      entry: suspect.entry,
      why: `meter \`${suspect.meter}\` ${suspect.why === 'falls' ? 'falls' : 'rises too fast'}`,
      suspect: { meter: suspect.meter, against: suspect.against },
    })),
    ...timeline.strays.map((stray) => ({ entry: stray.entry, why: stray.what })),
  ];
}
