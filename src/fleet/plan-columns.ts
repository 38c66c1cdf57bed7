import { indexGraph } from '../assess/graph-index.js';
import { linksOf } from '../assess/linked-doings.js';
import type { GraphIndex } from '../assess/world.js';
import type { RuleGraph, Task } from '../graph/rule-graph.js';
import { compareTexts } from '../base/compare-texts.js';
import { ticksPerDay } from '../history/ticks-per-day.js';
import type { ColumnPlan, PlanMeter, TaskPlan, TriggerPlan } from './column-plan.js';
import { PlanBuilder } from './plan-builder.js';

/**
 * Lays a schedule out for columns.
 *
 * Interval rules go into columns: intervals on meters that are read and on the calendar, marks on a meter, stages from the machine's
 * start, whichever comes first or last of them. Whatever needs more of a history than last doings and a reading stays outside and is
 * named: conditions, occasions, duties, attachments, readings of gauges, work time, beats that count from due points.
 *
 * @example planColumns(graph).outside.map((task) => plan.tasks[task].outside)
 */
export function planColumns(graph: RuleGraph): ColumnPlan {
  const index = indexGraph(graph);
  const meters: readonly PlanMeter[] = graph.meters
    .filter((each) => !each.fromOutings)
    .map((each) => ({ id: each.id, ticksPerDay: ticksPerDay(each) }));
  const builder = new PlanBuilder(
    graph,
    meters.map(({ id }) => id),
  );
  const tasks = graph.tasks.map((task, at) => planTask(index, builder, task, at));
  const outside = tasks.flatMap((task) => (task.outside === null ? [] : [task.index]));
  const { limits, firsts, registers } = builder;
  return { graph, meters, tasks, limits, firsts, registers, outside, verdictOutside: outside.length > 0 || graph.stops.length > 0 };
}

function planTask(index: GraphIndex, builder: PlanBuilder, task: Task, at: number): TaskPlan {
  const clockSetters = settersOf(index, task);
  const sources = clockSetters.map((id) => index.graph.tasks.findIndex((each) => each.id === id));
  const bare = { id: task.id, index: at, serial: task.serial ?? null, sources };
  const blocked = blockedBy(index, task, clockSetters);
  if (blocked !== null) return { ...bare, trigger: null, outside: blocked };
  if (task.trigger === undefined) return { ...bare, trigger: null, outside: null };
  const trigger: TriggerPlan | { readonly outside: string } = builder.plan(task.trigger);
  return 'outside' in trigger ? { ...bare, trigger: null, outside: trigger.outside } : { ...bare, trigger, outside: null };
}

/** The tasks whose last doing is the last doing of this one, or sets its clock (docs/meaning.md §3). */
function settersOf(index: GraphIndex, task: Task): readonly string[] {
  const { coveredBy, restartedBy } = linksOf(index.graph);
  const withCovers = (id: string): readonly string[] => [id, ...(coveredBy.get(id) ?? [])];
  const all = [...withCovers(task.id), ...(restartedBy.get(task.id) ?? []).flatMap(withCovers)];
  return [...new Set(all)].sort(compareTexts);
}

function blockedBy(index: GraphIndex, task: Task, setters: readonly string[]): string | null {
  if (task.attachment !== undefined) return `for attachment \`${task.attachment}\``;
  if (task.gate !== undefined) return index.graph.nodes[task.gate]?.origin.text ?? 'a condition';
  if (task.reads.length > 0) return `reads \`${task.reads[0]?.instrument.id ?? ''}\``;
  const parted = setters.find((id) => (index.tasks.get(id)?.metBy.length ?? 0) > 0);
  return parted === undefined ? null : `\`${parted}\` is met by others`;
}
