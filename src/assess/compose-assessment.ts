import type { TaskResult } from './assess-task.js';
import type { Assessment, Hold } from './assessment.js';
import { carried, type Holding } from './kinds.js';
import { verdictOf } from './verdict.js';
import type { Timeline } from '../history/timeline.js';
import type { World } from './world.js';

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
  const defects = defectHolding(world);
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

/** What open defects hold, and caution of. */
export function defectHolding(world: World): Holding {
  return world.index.defects.size === 0 ? { holds: [], notices: [] } : carried(world.kinds.aspects, 'openDefects')(world);
}

function setAside(timeline: Timeline): Assessment['setAside'] {
  return [
    ...timeline.suspects.map(({ entry, meter, why, against, alongside }) => ({
      entry,
      why: `meter \`${meter}\` ${why === 'falls' ? 'falls' : 'rises too fast'}`,
      suspect: { meter, against, ...(alongside.length === 0 ? {} : { alongside }) },
    })),
    ...timeline.strays.map((stray) => ({ entry: stray.entry, why: stray.what })),
  ];
}
