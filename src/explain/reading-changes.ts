/**
 * Readings that would alter a task's state: an edge of a condition's range, or of a band that asks for the task.
 */
import type { Instrument, Range, RuleGraph, Trigger } from '../graph/rule-graph.js';
import type { Beyond, Change, Reads } from './change.js';
import { inRange, truthIfRead } from './condition-if.js';
import { edgeValue, shortOfEdge } from './edges.js';
import type { RuleFacts } from './explanation.js';
import { conditionOf, mayAlter } from './influence.js';
import { ANYTHING, certain, exactly } from './possible.js';
import type { Possible } from './possible.js';
import type { Ground } from './ground.js';
import { taskStateIf } from './what-if.js';

interface Edge {
  readonly instrument: string;
  readonly beyond: Beyond;
  readonly value: number;
}

/** How many edges are tried: each asks anew what the whole rule would say, so that a made-up rule with thousands would take for ever. */
const MOST_EDGES = 200;

/** One change per instrument and state: the first edge, as written, beyond which it comes about. None on a day on which it was done, or where the instrument was read at no earlier time. */
export function readingChanges(ground: Ground, rule: RuleFacts): readonly Change[] {
  if (ground.standing.doneToday) return [];
  const { state } = ground.standing.task;
  const found: Reads[] = [];
  for (const edge of edgesOf(rule, ground.graph).slice(0, MOST_EDGES)) {
    if (ground.standing.readToday.has(edge.instrument)) continue;
    const becomes = stateIfRead(ground, edge.instrument, edgeValue(edge));
    const short = stateIfRead(ground, edge.instrument, shortOfEdge(edge));
    if (becomes === null || becomes === state || short === null || short === becomes) continue;
    if (found.some((other) => other.instrument === edge.instrument && other.becomes === becomes)) continue;
    found.push({ change: 'reads', ...edge, becomes });
  }
  return found;
}

function edgesOf(rule: RuleFacts, graph: RuleGraph): readonly Edge[] {
  const { node } = rule;
  const own = node.kind === 'compare' ? edges(node.instrument, node.range) : node.kind === 'asked' ? askedEdges(node, graph) : [];
  return [...own, ...rule.parts.flatMap((part) => edgesOf(part, graph))];
}

function edges(instrument: Instrument, range: Range): readonly Edge[] {
  if (instrument.is === 'meter') return [];
  const found: Edge[] = [];
  if (range.from !== undefined) {
    found.push({ instrument: instrument.id, beyond: range.fromIncluded ? 'at-least' : 'above', value: range.from });
    found.push({ instrument: instrument.id, beyond: range.fromIncluded ? 'below' : 'at-most', value: range.from });
  }
  if (range.to !== undefined) {
    found.push({ instrument: instrument.id, beyond: range.toIncluded ? 'at-most' : 'below', value: range.to });
    found.push({ instrument: instrument.id, beyond: range.toIncluded ? 'above' : 'at-least', value: range.to });
  }
  return found;
}

function askedEdges(node: Extract<Trigger, { kind: 'asked' }>, graph: RuleGraph): readonly Edge[] {
  const band = bandOf(node, graph);
  return band === null || node.within !== undefined ? [] : edges(band.instrument, band.range);
}

/** The instrument and the band whose reading asks for the task; `null` when a defect asks. */
function bandOf(
  node: Extract<Trigger, { kind: 'asked' }>,
  graph: RuleGraph,
): { readonly instrument: Instrument; readonly range: Range } | null {
  if (node.by.is !== 'reading') return null;
  const { task, reads, rule } = node.by;
  const reading = graph.tasks.find((candidate) => candidate.id === task)?.reads[reads];
  const range = reading?.rules[rule]?.range;
  return reading === undefined || range === undefined ? null : { instrument: reading.instrument, range };
}

function stateIfRead(ground: Ground, instrument: string, value: number): Change['becomes'] | null {
  const subject = { rule: ground.rule, gate: ground.gate, state: ground.standing.task.state };
  return certain(
    taskStateIf(subject, {
      leaf: (leaf) => leafIfRead(leaf, ground, instrument, value),
      truth: (condition) => truthIfRead(condition, instrument, value),
    }),
  );
}

function leafIfRead(rule: RuleFacts, ground: Ground, instrument: string, value: number): Possible {
  const node = rule.node as Trigger;
  const asItIs = rule.state === undefined ? ANYTHING : exactly(rule.state);
  if (node.kind === 'asked') return askedIfRead(rule, node, ground, instrument, value) ?? asItIs;
  if (node.kind === 'sooner') return node.dipstick === instrument ? ANYTHING : asItIs;
  const condition = conditionOf(rule);
  if (condition === null || !mayAlter(condition, { is: 'reading', instrument })) return asItIs;
  return node.kind === 'when' ? whenIfRead(rule, condition, instrument, value) : ANYTHING;
}

function whenIfRead(rule: RuleFacts, condition: RuleFacts, instrument: string, value: number): Possible {
  const truth = truthIfRead(condition, instrument, value);
  // Whether a doing has answered what is left of the condition cannot be told from its parts.
  if (truth === null || truth === 'unknown' || (rule.note?.is === 'answered' && condition.parts.length > 0)) return ANYTHING;
  return exactly(truth === 'true' ? 'due' : 'clear');
}

function askedIfRead(
  rule: RuleFacts,
  node: Extract<Trigger, { kind: 'asked' }>,
  ground: Ground,
  instrument: string,
  value: number,
): Possible | null {
  const band = bandOf(node, ground.graph);
  if (band === null || band.instrument.id !== instrument) return null;
  if (node.within !== undefined || rule.state === 'due' || rule.state === 'overdue') return ANYTHING;
  return inRange(value, band.range) ? exactly('due') : null;
}
