/** Tasks that cover or restart others (docs/meaning.md §3): what their doings come to for those. */
import { addTo } from '../base/gather.js';
import type { RuleGraph, Task } from '../graph/rule-graph.js';
import type { Doing } from '../history/timeline.js';
import { type EffectiveDoing, realDoings } from './doings.js';
import type { World } from './world.js';

/** For each task, the others that are linked to it. */
export interface Links {
  /** Task → the tasks whose doing counts as doing it (itself left out). */
  readonly coveredBy: ReadonlyMap<string, readonly string[]>;
  /** Task → the tasks whose doing sets its clock. */
  readonly restartedBy: ReadonlyMap<string, readonly string[]>;
}

const known = new WeakMap<RuleGraph, Links>();

/** The links of a graph, made once and kept for as long as the graph is (a pure function of it). */
export function linksOf(graph: RuleGraph): Links {
  const links = known.get(graph) ?? {
    coveredBy: reversed(graph, (task) => task.covers),
    restartedBy: reversed(graph, (task) => task.restarts),
  };
  known.set(graph, links);
  return links;
}

/** What is on record as a doing of a task that covers the one, unless the same entry names that too. */
export function coveringDoings({ index, timeline }: World, task: string): readonly Doing[] {
  const seen = new Set(timeline.doings.get(task)?.map(({ entry }) => entry));
  const covering = linksOf(index.graph).coveredBy.get(task) ?? [];
  return covering.flatMap((by) => {
    const doings = (timeline.doings.get(by) ?? []).filter(({ entry }) => !seen.has(entry));
    for (const { entry } of doings) seen.add(entry);
    return doings;
  });
}

/** The doings that set a task's clock without counting as doing it. */
export function restartingDoings(world: World, task: string): readonly EffectiveDoing[] {
  const by = linksOf(world.index.graph).restartedBy.get(task) ?? [];
  return by.flatMap((other) => realDoings(world, other).map((doing) => ({ ...doing, why: 'restarted' as const })));
}

function reversed(graph: RuleGraph, targets: (task: Task) => readonly string[]): ReadonlyMap<string, readonly string[]> {
  const sources = new Map<string, string[]>();
  for (const task of graph.tasks) for (const target of targets(task)) addTo(sources, target, task.id);
  return sources;
}
