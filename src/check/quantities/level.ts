/**
 * Levels and bands as ranges of readings.
 *
 * A gauge's levels are in its own unit, whatever unit they were written in. On a dipstick 0 is the low mark and 1 the full mark; a volume is so
 * much above low. On a meter they are ticks. Inside a named band's place stands the band's edge: `above normal` begins where normal ends.
 */
import type { Range } from '../../graph/rule-graph.js';
import type { BandNode, FactNode, LevelNode, NameNode, NumberNode, QuantityNode } from '../../syntax/tree.js';
import { ticksOf } from '../../values/ticks.js';
import { findUnit } from '../../values/units.js';
import type { DefinitionOf } from '../model.js';
import { rewrite } from '../report.js';
import { problem, type Read } from './read.js';
import { listedShort, nearWord } from '../words.js';
import { quantityIn } from './units.js';

export type Instrument = DefinitionOf<'gauge'> | DefinitionOf<'dipstick'> | DefinitionOf<'meter'>;

const everything: Range = { fromIncluded: false, toIncluded: false };

/** A band of an instrument as a range. */
export function rangeOfBand(band: BandNode, instrument: Instrument): Read<Range> {
  if (band.kind === 'band-name') return edgesOf(band.name, instrument);
  const from = band.from === undefined ? { value: everything } : bounded(band.from, instrument, band.fromIncluded ? 'from' : 'to');
  if ('problem' in from) return from;
  const to = band.to === undefined ? { value: everything } : bounded(band.to, instrument, band.toIncluded ? 'to' : 'from');
  if ('problem' in to) return to;
  const lower = band.from === undefined ? everything : band.fromIncluded ? lowerEdge(from.value) : beyond(from.value);
  const upper = band.to === undefined ? everything : band.toIncluded ? upperEdge(to.value) : short(to.value);
  return { value: joined(lower, upper) };
}

/** What `above`, `below`, `at least`, `at most` or `from … to` hold of, as a range. */
export function rangeOfFact(fact: Extract<FactNode, { kind: 'compare' | 'between' }>, instrument: Instrument): Read<Range> {
  if (fact.kind === 'between')
    return rangeOfBand({ kind: 'range', at: fact.at, from: fact.from, fromIncluded: true, to: fact.to, toIncluded: true }, instrument);
  const level = bounded(fact.level, instrument, fact.op === 'above' || fact.op === 'at-most' ? 'to' : 'from');
  if ('problem' in level) return level;
  const edges = level.value;
  switch (fact.op) {
    case 'above':
      return { value: joined(beyond(edges), everything) };
    case 'at-least':
      return { value: joined(lowerEdge(edges), everything) };
    case 'below':
      return { value: joined(everything, short(edges)) };
    case 'at-most':
      return { value: joined(everything, upperEdge(edges)) };
  }
}

/** A level as a range: a point for a number, a mark or a quantity, the whole band for a band's name. */
export function edgesOf(level: LevelNode, instrument: Instrument): Read<Range> {
  if (level.kind === 'name') return named(level, instrument);
  const value = level.kind === 'number' ? plain(level, instrument) : measured(level, instrument);
  return 'problem' in value ? value : { value: point(value.value) };
}

/** As {@link edgesOf}, for a level that serves as an edge: a band without end has none to offer. */
function bounded(level: LevelNode, instrument: Instrument, edge: 'from' | 'to'): Read<Range> {
  const read = edgesOf(level, instrument);
  if ('problem' in read || read.value[edge] !== undefined) return read;
  const name = level.kind === 'name' ? level.text : '';
  const message = `The band \`${name}\` has no ${edge === 'to' ? 'upper' : 'lower'} end to compare with.`;
  return problem('bandWithoutEdge', {
    at: level.at,
    message,
    labels: [{ at: instrument.at, text: 'declared here' }],
    help: `Write a number. In a condition it is \`${instrument.name} is ${name}\`; below \`reads\` the band stands by itself: \`${name}\`.`,
  });
}

function named(name: NameNode, instrument: Instrument): Read<Range> {
  if (instrument.kind === 'dipstick') {
    if (name.text === 'low') return { value: point(0) };
    if (name.text === 'full') return { value: point(1) };
    return unknownWord(name, instrument, ['low', 'full']);
  }
  const bands = instrument.kind === 'gauge' ? instrument.node.bands : [];
  const found = bands.find((band) => band.name.text === name.text);
  if (found === undefined)
    return unknownWord(
      name,
      instrument,
      bands.map((band) => band.name.text),
    );
  // A band that is defined by names could go round in a circle, so its own edges are numbers only.
  return usesNames(found.band)
    ? problem('bandWithoutEdge', { at: found.at, message: `The edges of the band \`${name.text}\` have to be numbers.` })
    : rangeOfBand(found.band, instrument);
}

/** Says that an instrument has no band or mark of this name. */
function unknownWord(name: NameNode, instrument: Instrument, words: readonly string[]): Read<Range> {
  const near = nearWord(name.text, words);
  const what = instrument.kind === 'dipstick' ? 'mark' : 'band';
  const known = words.length === 0 ? 'It has none.' : `It has ${listedShort(words, 'and')}.`;
  return problem('unknownWord', {
    at: name.at,
    message: `\`${instrument.name}\` has no ${what} \`${name.text}\`.`,
    labels: [{ at: instrument.at, text: 'declared here' }],
    help: near === undefined ? known : `Did you mean \`${near}\`?`,
    fixes: near === undefined ? [] : [rewrite('likely', name.at, near)],
  });
}

function usesNames(band: BandNode): boolean {
  return band.kind === 'band-name' || band.from?.kind === 'name' || band.to?.kind === 'name';
}

function plain(number: NumberNode, instrument: Instrument): Read<number> {
  return { value: instrument.kind === 'meter' ? ticksOf(number.value) : number.value };
}

function measured(quantity: QuantityNode, instrument: Instrument): Read<number> {
  if (instrument.kind === 'dipstick') return onDipstick(quantity, instrument);
  const unit = findUnit(instrument.node.unit.text);
  // A unit that is unknown is reported where the instrument is declared.
  if (unit === null) return { value: 0 };
  const verb = instrument.kind === 'gauge' ? 'reads' : 'counts';
  const read = quantityIn(quantity, unit, () => ({
    wanted: `a reading in ${unit.symbol}`,
    labels: [{ at: instrument.node.unit.at, text: `\`${instrument.name}\` ${verb} ${unit.symbol}` }],
  }));
  if ('problem' in read) return read;
  return { value: instrument.kind === 'meter' ? ticksOf(read.value) : read.value };
}

function onDipstick(quantity: QuantityNode, instrument: DefinitionOf<'dipstick'>): Read<number> {
  const { range } = instrument.node;
  const unit = findUnit(range.unit.text);
  if (unit === null || !(range.number.value > 0)) return { value: 0 };
  const read = quantityIn(quantity, unit, () => ({
    wanted: `a mark or an amount in ${unit.symbol}`,
    labels: [{ at: range.at, text: `low to full of \`${instrument.name}\`` }],
    help: 'Write `low`, `full`, or so much above low.',
  }));
  return 'problem' in read ? read : { value: read.value / range.number.value };
}

function point(value: number): Range {
  return { from: value, fromIncluded: true, to: value, toIncluded: true };
}

type Edge = Pick<Range, 'fromIncluded' | 'toIncluded'> & { readonly from?: number; readonly to?: number };

function lowerEdge(band: Range): Edge {
  return { from: band.from, fromIncluded: band.fromIncluded, toIncluded: false };
}

function upperEdge(band: Range): Edge {
  return { fromIncluded: false, to: band.to, toIncluded: band.toIncluded };
}

/** The lower edge of what lies above a band. */
function beyond(band: Range): Edge {
  return { from: band.to, fromIncluded: !band.toIncluded, toIncluded: false };
}

/** The upper edge of what lies below a band. */
function short(band: Range): Edge {
  return { fromIncluded: false, to: band.from, toIncluded: !band.fromIncluded };
}

function joined(lower: Edge, upper: Edge): Range {
  return {
    ...(lower.from === undefined ? {} : { from: lower.from }),
    fromIncluded: lower.from !== undefined && lower.fromIncluded,
    ...(upper.to === undefined ? {} : { to: upper.to }),
    toIncluded: upper.to !== undefined && upper.toIncluded,
  };
}
