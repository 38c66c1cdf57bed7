import type { RuleGraph } from '../graph/rule-graph.js';
import type { Timeline } from '../history/timeline.js';
import type { Moment } from '../values/moment.js';
import { assessTask } from './assess-task.js';
import type { Assessment, AssessOptions } from './assessment.js';
import { composeAssessment } from './compose-assessment.js';
import { indexGraph } from './graph-index.js';
import { carried, type Kinds } from './kinds.js';
import { World } from './world.js';

/** Assesses by the kinds that are given, which have to be all that the graph asks for. @throws BudgetError as `assess` does. */
export function run(kinds: Omit<Kinds, 'entries'>, graph: RuleGraph, timeline: Timeline, now: Moment, options: AssessOptions): Assessment {
  const world = new World(indexGraph(graph), timeline, now, options, kinds);
  const stops = graph.stops.length === 0 ? [] : carried(kinds.aspects, 'stops')(world);
  const stopRecord = world.takeRecord();
  const results = graph.tasks.map((task) => assessTask(world, task));
  return composeAssessment(world, { stops, stopRecord, results });
}
