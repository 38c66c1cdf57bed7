import type { RuleGraph } from '../graph/rule-graph.js';
import type { Entry } from '../history/entry.js';
import { readTimeline } from '../history/read-timeline.js';
import type { Timeline } from '../history/timeline.js';
import type { Moment } from '../values/moment.js';
import type { Assessment, AssessOptions } from './assessment.js';
import { everyKind } from './every-kind.js';
import { indexGraph } from './graph-index.js';
import { run } from './run.js';
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
  return run(everyKind, graph, timeline, now, options);
}

/** What a run of {@link assess} looks at, for those that run it in parts. */
export function worldOf(graph: RuleGraph, timeline: Timeline, now: Moment, options: AssessOptions): World {
  return new World(indexGraph(graph), timeline, now, options, everyKind);
}
