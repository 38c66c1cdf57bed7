/**
 * Readings that would alter a task's state: an edge of a condition's range, or of a band that asks for the task.
 */
import type { Trigger } from '../graph/rule-graph.js';
import type { Change } from './change.js';
import { inRange, truthIfRead } from './condition-if.js';
import { edgeValue, shortOfEdge } from './edges.js';
import type { RuleFacts } from './explanation.js';
import type { Ground } from './ground.js';
import { conditionOf, mayAlter } from './influence.js';
import { ANYTHING, certain, exactly } from './possible.js';
import type { Possible } from './possible.js';
import { taskStateIf, type WhatIf } from './what-if.js';

/** An instrument reads so much now. */
interface Read {
  readonly instrument: string;
  readonly value: number;
}

/** One change per instrument and state: the first edge, as written, beyond which it comes about. None on a day on which it was done, or where the instrument was read at no earlier time. */
export function addReadingChanges(ground: Ground, changes: Change[]): void {
  const { edges } = ground.outline;
  if (edges.length === 0 || ground.standing.doneToday) return;
  const told = (instrument: string, becomes: Change['becomes']): boolean =>
    changes.some((other) => other.change === 'reads' && other.instrument === instrument && other.becomes === becomes);
  for (const edge of edges) {
    const { instrument } = edge;
    if (ground.standing.readToday.has(instrument)) continue;
    const becomes = stateIfRead(ground, { instrument, value: edgeValue(edge) });
    if (becomes === null || becomes === ground.state || told(instrument, becomes)) continue;
    const short = stateIfRead(ground, { instrument, value: shortOfEdge(edge) });
    if (short !== null && short !== becomes) changes.push({ change: 'reads', ...edge, becomes });
  }
}

const ifRead: WhatIf<Read> = { leaf: leafIfRead, truth: truthIfRead };

function stateIfRead(ground: Ground, read: Read): Change['becomes'] | null {
  return certain(taskStateIf(ground, ifRead, read));
}

function leafIfRead(rule: RuleFacts, ground: Ground, read: Read): Possible {
  const node = rule.node as Trigger;
  const asItIs = rule.state === undefined ? ANYTHING : exactly(rule.state);
  if (node.kind === 'asked') return askedIfRead(rule, node, ground, read) ?? asItIs;
  if (node.kind === 'sooner') return node.dipstick === read.instrument ? ANYTHING : asItIs;
  const condition = conditionOf(rule);
  if (condition === null || !mayAlter(condition, { is: 'reading', instrument: read.instrument })) return asItIs;
  return node.kind === 'when' ? whenIfRead(rule, condition, read) : ANYTHING;
}

function whenIfRead(rule: RuleFacts, condition: RuleFacts, read: Read): Possible {
  const truth = truthIfRead(condition, read);
  // Whether a doing has answered what is left of the condition cannot be told from its parts.
  if (truth === null || truth === 'unknown' || (rule.note?.is === 'answered' && condition.parts.length > 0)) return ANYTHING;
  return exactly(truth === 'true' ? 'due' : 'clear');
}

function askedIfRead(
  rule: RuleFacts,
  node: Extract<Trigger, { kind: 'asked' }>,
  { outline }: Ground,
  { instrument, value }: Read,
): Possible | null {
  const band = outline.bands.get(node.id);
  if (band === undefined || band.instrument.id !== instrument) return null;
  if (node.within !== undefined || rule.state === 'due' || rule.state === 'overdue') return ANYTHING;
  return inRange(value, band.range) ? exactly('due') : null;
}
