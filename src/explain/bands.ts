/**
 * The edges of what readings decide in a task's rules: of conditions that compare, and of bands that ask for the task.
 */
import type { Instrument, NodeId, Range, RuleGraph, Trigger } from '../graph/rule-graph.js';
import type { Beyond } from './change.js';
import type { RuleOutline } from './rule-outline.js';

/** The instrument and the band whose reading asks for a task. */
export interface Band {
  readonly instrument: Instrument;
  readonly range: Range;
}

/** A side of an edge that a reading of the instrument can come to. */
export interface Edge {
  readonly instrument: string;
  readonly beyond: Beyond;
  readonly value: number;
}

/** How many edges are tried: each asks anew what the whole rule would say, so that a made-up rule with thousands would take for ever. */
const MOST_EDGES = 200;

/** The bands that ask for the task, by the node that says so. */
export function bandsIn({ node, parts }: RuleOutline, graph: RuleGraph): readonly (readonly [NodeId, Band])[] {
  const band = node.kind === 'asked' ? bandOf(node, graph) : null;
  return [...(band === null ? [] : [[node.id, band] as const]), ...parts.flatMap((part) => bandsIn(part, graph))];
}

/** The edges in the order in which they are written, no more than are tried. */
export function edgesIn(rule: RuleOutline, bands: ReadonlyMap<NodeId, Band>): readonly Edge[] {
  return allEdges(rule, bands).slice(0, MOST_EDGES);
}

function allEdges({ node, parts }: RuleOutline, bands: ReadonlyMap<NodeId, Band>): readonly Edge[] {
  const band = node.kind === 'compare' ? node : node.kind === 'asked' && node.within === undefined ? bands.get(node.id) : undefined;
  return [...(band === undefined ? [] : edgesOf(band.instrument, band.range)), ...parts.flatMap((part) => allEdges(part, bands))];
}

/** `null` when a defect asks. */
function bandOf({ by }: Extract<Trigger, { kind: 'asked' }>, graph: RuleGraph): Band | null {
  if (by.is !== 'reading') return null;
  const reading = graph.tasks.find((candidate) => candidate.id === by.task)?.reads[by.reads];
  const range = reading?.rules[by.rule]?.range;
  return reading === undefined || range === undefined ? null : { instrument: reading.instrument, range };
}

function edgesOf(instrument: Instrument, range: Range): readonly Edge[] {
  if (instrument.is === 'meter') return [];
  const { from, fromIncluded, to, toIncluded } = range;
  const edge = (value: number | undefined, ...sides: readonly Beyond[]): readonly Edge[] =>
    value === undefined ? [] : sides.map((beyond) => ({ instrument: instrument.id, beyond, value }));
  return [
    ...(fromIncluded ? edge(from, 'at-least', 'below') : edge(from, 'above', 'at-most')),
    ...(toIncluded ? edge(to, 'at-most', 'above') : edge(to, 'below', 'at-least')),
  ];
}
