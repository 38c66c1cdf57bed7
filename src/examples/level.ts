/**
 * What a worked example says was read, in the units of what it was read on.
 */
import { isDefinitionOf, type Definition } from '../check/model.js';
import { edgesOf, type Instrument } from '../check/quantities/level.js';
import { sound } from '../check/whole.js';
import type { Range } from '../graph/rule-graph.js';
import type { LevelNode, QuantityNode } from '../syntax/tree.js';
import { convert, findUnit } from '../values/units.js';

/** A gauge, dipstick or meter; undefined for anything else. */
export function asInstrument(definition: Definition | undefined): Instrument | undefined {
  if (definition === undefined) return undefined;
  const isOne = isDefinitionOf(definition, 'gauge') || isDefinitionOf(definition, 'dipstick') || isDefinitionOf(definition, 'meter');
  return isOne ? definition : undefined;
}

/** What was read, as a logbook notes it. */
export type Reading = number | 'below-low' | 'above-full';

/**
 * A level as one reading: a band's name stands for a reading within it. Gauge units; on a dipstick 0 is low and 1 full, or the reading lies
 * somewhere beyond the marks; ticks of a meter.
 */
export function readingOf(level: LevelNode, instrument: Instrument): Reading {
  if (instrument.kind === 'dipstick' && level.kind === 'name' && isBeyond(level.text)) return level.text;
  return valueIn(sound(edgesOf(level, instrument)));
}

function isBeyond(word: string): word is 'below-low' | 'above-full' {
  return word === 'below-low' || word === 'above-full';
}

/** A value well within a range: its middle, or one unit past its only edge. */
export function valueIn({ from, to }: Range): number {
  if (from !== undefined && to !== undefined) return Math.round(((from + to) / 2) * 1e6) / 1e6;
  if (from !== undefined) return from + 1;
  return to === undefined ? 0 : to - 1;
}

/** A quantity in another unit; as it is where they do not convert. */
export function inUnit({ number, unit }: QuantityNode, wanted: string | undefined): number {
  const [from, to] = [findUnit(unit.text), wanted === undefined ? null : findUnit(wanted)];
  return from === null || to === null ? number.value : (convert(number.value, from, to) ?? number.value);
}
