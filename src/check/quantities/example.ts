/**
 * The quantities of a worked example, read as what they are said of.
 */
import { assertNever } from '../../base/assert-never.js';
import type { ActNode, ExampleNode, ExpectNode, LevelNode, LimitNode, NameNode, QuantityNode } from '../../syntax/tree.js';
import { findUnit } from '../../values/units.js';
import { isDefinitionOf, type Home, type Model } from '../model.js';
import { edgesOf } from './level.js';
import { readingsInOccasion } from './occasion.js';
import type { Read } from './read.js';
import { readingsInCondition } from './readings.js';
import { quantityIn, secondsOf } from './units.js';

type Reading = Read<unknown> | undefined;

/** Every quantity of an example; `ofLimit` reads those of a limit that a reason names. */
export function readingsInExample(
  model: Model,
  home: Home,
  { lines }: ExampleNode,
  ofLimit: (limit: LimitNode) => readonly Reading[],
): readonly Reading[] {
  return lines.flatMap(({ items }) =>
    items.flatMap((item) =>
      item.kind === 'expect-machine' || item.kind === 'expect-task' ? inExpect(model, home, item, ofLimit) : inAct(model, item),
    ),
  );
}

function inAct(model: Model, act: ActNode): readonly Reading[] {
  switch (act.kind) {
    case 'act-meter':
      return [onMeter(model, act.name, act.value)];
    case 'act-reads':
      return [level(model, act.name, act.level)];
    case 'act-outing':
      return act.time === undefined ? [] : [secondsOf(act.time)];
    case 'act-states':
      return act.meter === undefined || act.value === undefined ? [] : [onMeter(model, act.meter, act.value)];
    default:
      return [];
  }
}

function inExpect(model: Model, home: Home, expect: ExpectNode, ofLimit: (limit: LimitNode) => readonly Reading[]): readonly Reading[] {
  if (expect.kind === 'expect-machine') return [];
  const points = expect.until.flatMap((point) => (point.kind === 'point-meter' ? [onMeter(model, point.meter, point.value)] : []));
  const { because } = expect;
  switch (because?.kind) {
    case 'because-limit':
      return [...ofLimit(because.limit), ...points];
    case 'because-when':
      return [...readingsInCondition(model, home, because.condition), ...points];
    case 'because-occasion':
      return [...readingsInOccasion(model, home, because.what), ...points];
    case 'because-name':
    case undefined:
      return points;
    default:
      return assertNever(because);
  }
}

function onMeter(model: Model, name: NameNode, value: QuantityNode): Reading {
  const meter = model.meaning.get(name);
  if (meter === undefined || !isDefinitionOf(meter, 'meter')) return undefined;
  const unit = findUnit(meter.node.unit.text);
  if (unit === null) return undefined;
  return quantityIn(value, unit, () => ({
    wanted: `an amount in ${unit.symbol}`,
    labels: [{ at: meter.node.unit.at, text: `\`${meter.name}\` counts ${meter.node.unit.text}` }],
  }));
}

/** A dipstick can also stand somewhere beyond its marks. */
function level(model: Model, name: NameNode, read: LevelNode): Reading {
  const instrument = model.meaning.get(name);
  if (instrument === undefined) return undefined;
  const isBeyond = read.kind === 'name' && (read.text === 'below-low' || read.text === 'above-full');
  if (isDefinitionOf(instrument, 'dipstick')) return isBeyond ? undefined : edgesOf(read, instrument);
  return isDefinitionOf(instrument, 'gauge') || isDefinitionOf(instrument, 'meter') ? edgesOf(read, instrument) : undefined;
}
