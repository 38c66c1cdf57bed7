/** What a schedule, and a history, ask of an engine that is to judge them. */
import { partsOf } from '../graph/node-references.js';
import type { Amount, CalendarAmount, NodeId, Origin, RuleGraph } from '../graph/rule-graph.js';
import type { Entry, EntryId } from '../history/entry.js';
import { axisKind } from './axis.js';
import { asksFor } from './kinds.js';

/** One kind that is asked for, by the first thing that does. */
export interface Need {
  /** A kind of trigger, condition or axis, an aspect or a sort of fact: no two share a name. Of entries: their kind, or `readings`. */
  readonly kind: string;
  /** Where the schedule says it; `null` for what an entry asks for. */
  readonly origin: Origin | null;
  readonly entry: EntryId | null;
}

/** Aspects that members of their names ask for, of rules, tasks and meters. */
const ASPECTS = ['hold', 'standstill', 'serial', 'attachment', 'gate', 'reads', 'metBy', 'covers', 'restarts', 'weeks', 'placed'] as const;

/** The kinds that a graph asks for: by the rules and conditions of its tasks and stops, and by what tasks, meters and defects have besides. */
export function needsOf(graph: RuleGraph): readonly Need[] {
  const needs = new Map<string, Need>();
  const seen = new Set<NodeId>();
  const ask = (kind: string, { origin }: { readonly origin: Origin }): void => {
    if (!needs.has(kind)) needs.set(kind, { kind, origin, entry: null });
  };
  const askForAspects = (asking: { readonly origin: Origin }): void => {
    for (const aspect of ASPECTS) if (asksFor(asking, aspect)) ask(aspect, asking);
  };
  const visit = (id: NodeId): void => {
    const node = graph.nodes[id];
    if (node === undefined || seen.has(id)) return;
    seen.add(id);
    ask(node.kind, node);
    askForAspects(node);
    if (node.kind === 'interval' && node.doings !== undefined) ask('often', node);
    if ('count' in node && node.count !== 'doing') ask('beat', node);
    if ('mode' in node && node.mode === 'last') ask('last', node);
    for (const amount of amountsOf(node)) {
      ask(axisKind(amount), node);
      if (amount.on === 'calendar' && !isPlain(amount)) ask('calendar-months', node);
    }
    partsOf(node).forEach(visit);
  };
  for (const meter of graph.meters) {
    askForAspects(meter);
    if (meter.fromOutings) ask('outings', meter);
  }
  for (const defect of graph.defects) ask('openDefects', defect);
  for (const stop of graph.stops) {
    ask('stops', stop);
    visit(stop.condition);
  }
  for (const task of graph.tasks) {
    askForAspects(task);
    for (const id of [task.gate, task.trigger]) if (id !== undefined) visit(id);
  }
  return [...needs.values()];
}

/** Spans, and margins in months: told by the axis that they are on, whatever they are called in their node. */
function amountsOf(node: object): readonly Amount[] {
  const values: readonly unknown[] = Object.values(node).flat();
  const parts = values.filter((value) => typeof value === 'object' && value !== null);
  return parts.flatMap((part) => ('on' in part ? [part as Amount] : amountsOf(part)));
}

/** Whether a span is of days, months or minutes, and nothing less or more. */
function isPlain({ unit, less, plus }: CalendarAmount): boolean {
  return unit !== 'calendar-months' && less === undefined && plus === undefined;
}

/** The kinds of entry that a history has, whatever the schedule; whether any of them notes readings, or has the id of another. */
export function needsOfEntries(entries: readonly Entry[]): readonly Need[] {
  const needs = new Map<string, Need>();
  const ids = new Set<EntryId>();
  const ask = (kind: string, entry: EntryId): void => {
    if (!needs.has(kind)) needs.set(kind, { kind, origin: null, entry });
  };
  for (const { id, kind, readings } of entries) {
    ask(kind, id);
    if (readings !== undefined) ask('readings', id);
    if (ids.has(id)) ask('sameId', id);
    ids.add(id);
  }
  return [...needs.values()];
}
