/**
 * Every quantity of a condition, of a `reads` clause and of what the machine has, read: what a rule checks and `compile` relies on.
 */
import type { ConditionNode, DeclarationNode, NumberNode, ReadsNode } from '../../syntax/tree.js';
import { isDefinitionOf, type Definition, type Home, type Model } from '../model.js';
import { calendarAmountOf, delayOf } from './amount.js';
import { edgesOf, rangeOfBand, rangeOfFact, type Instrument } from './level.js';
import { problem, type Read } from './read.js';
import { trendSize } from './trend.js';
import { secondsOf, unitOf } from './units.js';
import { litresOf } from './work.js';

type Reading = Read<unknown> | undefined;

/** The instrument that a definition is, if it is one. */
export function asInstrument(definition: Definition | undefined): Instrument | undefined {
  if (definition === undefined) return undefined;
  const isOne = isDefinitionOf(definition, 'gauge') || isDefinitionOf(definition, 'dipstick') || isDefinitionOf(definition, 'meter');
  return isOne ? definition : undefined;
}

/** Levels, trends and spans of a condition. */
export function readingsInCondition(model: Model, home: Home, condition: ConditionNode): readonly Reading[] {
  switch (condition.kind) {
    case 'and':
    case 'or':
      return condition.parts.flatMap((part) => readingsInCondition(model, home, part));
    case 'not':
      return readingsInCondition(model, home, condition.part);
    case 'compare':
    case 'between': {
      const instrument = asInstrument(model.meaning.get(condition.subject));
      return instrument === undefined ? [] : [rangeOfFact(condition, instrument)];
    }
    case 'trend': {
      const instrument = asInstrument(model.meaning.get(condition.subject));
      return [
        calendarAmountOf(condition.within),
        ...(instrument === undefined ? [unitOf(condition.by.unit)] : [trendSize(condition.by, instrument)]),
      ];
    }
    case 'recent':
      return [condition.within && delayOf(model, home, condition.within), howOften(condition.times)];
    case 'machine':
      return [calendarAmountOf(condition.span)];
    case 'is':
    case 'worse':
    case 'in':
    case 'unworked':
    case 'at-work':
    case 'season':
      return [];
  }
}

function howOften(times: NumberNode | undefined): Reading {
  if (times === undefined || (times.value >= 1 && times.value <= 1000)) return undefined;
  return problem('impossibleNumber', {
    at: times.at,
    message: `Nothing is asked for ${times.text} times.`,
    help: 'Write 1 to 1000 times.',
  });
}

/** Levels of the bands and delays of what they ask for. */
export function readingsInReads(model: Model, home: Home, { instrument, bands }: ReadsNode): readonly Reading[] {
  const read = asInstrument(model.meaning.get(instrument));
  return bands.flatMap(({ band, outcome }) => [
    read === undefined ? undefined : rangeOfBand(band, read),
    ...outcome.then.map(({ within }) => within && delayOf(model, home, within)),
  ]);
}

/** Units, bands and spans of anything but a task, a step or a defect. */
export function readingsInDeclaration(model: Model, home: Home, node: DeclarationNode): readonly Reading[] {
  switch (node.kind) {
    case 'meter':
      return [unitOf(node.unit)];
    case 'gauge':
      return [unitOf(node.unit), node.fresh && calendarAmountOf(node.fresh), ...gaugeBands(model, node.name.text, home)];
    case 'dipstick':
      return [litresOf(node.range), node.fresh && calendarAmountOf(node.fresh)];
    case 'supply':
      return [node.unit && unitOf(node.unit)];
    case 'walk':
      return [secondsOf(node.time)];
    case 'never':
    case 'stop':
      return readingsInCondition(model, home, node.condition);
    default:
      return [];
  }
}

function gaugeBands(model: Model, name: string, home: Home): readonly Reading[] {
  const gauge = model.definitions.find((each) => each.kind === 'gauge' && each.name === name && each.home === home);
  const instrument = asInstrument(gauge);
  return instrument?.kind === 'gauge' ? instrument.node.bands.map((band) => edgesOf(band.name, instrument)) : [];
}
