/**
 * The rules of a task with what the run recorded for them, as a tree in the order in which the author wrote them.
 */
import type { Observation } from '../assess/assessment.js';
import { partsOf } from '../graph/node-references.js';
import type { NodeId, Origin, RuleGraph } from '../graph/rule-graph.js';
import { dateEntry } from '../history/dated-entry.js';
import type { Entry, EntryId } from '../history/entry.js';
import { dayOf } from '../values/civil.js';
import type { Moment } from '../values/moment.js';
import type { Place, RuleFacts } from './explanation.js';

/** What the tree is read from. */
export interface Recorded {
  readonly graph: RuleGraph;
  readonly observations: ReadonlyMap<NodeId, Observation>;
  readonly entries: ReadonlyMap<EntryId, Entry>;
}

/** The tree below one node; `null` for a node that the graph does not have. */
export function ruleFacts(recorded: Recorded, id: NodeId): RuleFacts | null {
  const node = recorded.graph.nodes[id];
  if (node === undefined) return null;
  const seen = recorded.observations.get(id);
  const parts = partsOf(node).flatMap((part) => ruleFacts(recorded, part) ?? []);
  return { node, place: placeOf(recorded.graph, node.origin), ...observed(recorded, seen), parts };
}

/** Where something was written, with the path of its file. */
export function placeOf(graph: RuleGraph, origin: Origin): Place {
  const { line, column, text } = origin;
  return { file: graph.sources[origin.source]?.path ?? '', line, column, text };
}

function observed(recorded: Recorded, seen: Observation | undefined): Pick<RuleFacts, 'entries' | 'missing'> & Partial<RuleFacts> {
  if (seen === undefined) return { entries: [], missing: [] };
  const { limit } = seen;
  return {
    ...pick(seen),
    ...(limit === undefined ? {} : { limit, baseWhen: baseWhen(limit.base), readWhen: firstMoment(recorded, limit.now?.entries ?? []) }),
    entries: seen.entries,
    missing: seen.missing ?? [],
  };
}

function pick(seen: Observation): Partial<RuleFacts> {
  return {
    ...(seen.state === undefined ? {} : { state: seen.state }),
    ...(seen.truth === undefined ? {} : { truth: seen.truth }),
    ...(seen.since === undefined ? {} : { since: seen.since }),
    ...(seen.reachedAt === undefined ? {} : { reachedAt: seen.reachedAt }),
    ...(seen.stood === undefined ? {} : { stood: seen.stood }),
    ...(seen.shares === undefined ? {} : { shares: seen.shares }),
    ...(seen.note === undefined ? {} : { note: seen.note }),
    ...(seen.governing === undefined ? {} : { governing: seen.governing }),
  };
}

function baseWhen(base: NonNullable<Observation['limit']>['base']): Moment | null {
  if (base === null) return null;
  if (base.point.on === 'calendar') return { day: base.point.day, minute: null };
  return base.point.on === 'moment' ? base.point.at : base.when;
}

function firstMoment(recorded: Recorded, ids: readonly EntryId[]): Moment | null {
  const entry = ids.map((id) => recorded.entries.get(id)).find((found) => found !== undefined);
  if (entry === undefined) return null;
  if (entry.kind === 'machine' && entry.inService !== undefined) return dayMoment(entry.inService);
  if (entry.kind === 'stated') return entry.doneBy === undefined ? null : dayMoment(entry.doneBy);
  return dateEntry(entry)?.when ?? null;
}

function dayMoment(date: string): Moment | null {
  const day = dayOf(date);
  return day === null ? null : { day, minute: null };
}
