/** What a schedule, and a history, ask of an engine that is to judge them. */
import { partsOf } from '../graph/node-references.js';
import type { Amount, Node, NodeId, Origin, RuleGraph } from '../graph/rule-graph.js';
import type { Entry, EntryId } from '../history/entry.js';
import { axisKind } from './axis.js';

/** One kind that is asked for, by the first thing that does. */
export interface Need {
  /** A kind of trigger, condition or axis, an aspect or a sort of fact: no two share a name. Of entries: their kind, or `readings`. */
  readonly kind: string;
  /** Where the schedule says it; `null` for what an entry asks for. */
  readonly origin: Origin | null;
  readonly entry: EntryId | null;
}

/** The kinds that a graph asks for: by the rules and conditions of its tasks and stops, and by what tasks, meters and defects have besides. */
export function needsOf(graph: RuleGraph): readonly Need[] {
  const needs = new Map<string, Need>();
  const seen = new Set<NodeId>();
  const ask = (kind: string, { origin }: { readonly origin: Origin }): void => {
    if (!needs.has(kind)) needs.set(kind, { kind, origin, entry: null });
  };
  const visit = (id: NodeId): void => {
    const node = graph.nodes[id];
    if (node === undefined || seen.has(id)) return;
    seen.add(id);
    ask(node.kind, node);
    if (node.kind === 'interval' && node.standstill !== undefined) ask('storedTime', node);
    if (node.kind === 'interval' && node.doings !== undefined) ask('often', node);
    if ('count' in node && node.count !== 'doing') ask('beat', node);
    for (const amount of amountsOf(node)) ask(axisKind(amount), node);
    partsOf(node).forEach(visit);
  };
  for (const meter of graph.meters) {
    if (meter.fromOutings) ask('outings', meter);
    if (meter.attachment !== undefined) ask('attachments', meter);
  }
  for (const defect of graph.defects) ask('openDefects', defect);
  for (const stop of graph.stops) {
    ask('stops', stop);
    visit(stop.condition);
  }
  for (const task of graph.tasks) {
    if (task.attachment !== undefined) ask('attached', task);
    if (task.reads.length > 0) ask('reads', task);
    if (task.metBy.length > 0) ask('metBy', task);
    if (task.gate !== undefined) {
      ask('gate', task);
      visit(task.gate);
    }
    if (task.trigger !== undefined) visit(task.trigger);
  }
  return [...needs.values()];
}

/** Spans are told by the axis that they are on, whatever they are called in their node. */
function amountsOf(node: Node): readonly Amount[] {
  const values: readonly unknown[] = Object.values(node).flat();
  return values.filter((value): value is Amount => typeof value === 'object' && value !== null && 'on' in value);
}

/** The kinds of entry that a history has, whatever the schedule, and whether any of them notes readings. */
export function needsOfEntries(entries: readonly Entry[]): readonly Need[] {
  const needs = new Map<string, Need>();
  for (const { id, kind, readings } of entries) {
    if (!needs.has(kind)) needs.set(kind, { kind, origin: null, entry: id });
    if (readings !== undefined && !needs.has('readings')) needs.set('readings', { kind: 'readings', origin: null, entry: id });
  }
  return [...needs.values()];
}
