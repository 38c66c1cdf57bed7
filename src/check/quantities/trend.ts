/**
 * By how much a reading climbs or falls, in the instrument's own unit.
 */
import type { QuantityNode } from '../../syntax/tree.js';
import { ticksOf } from '../../values/ticks.js';
import { findUnit } from '../../values/units.js';
import type { Instrument } from './level.js';
import { mapRead, type Read } from './read.js';
import { differenceIn } from './units.js';

/** The size of a trend: gauge units, share of low to full on a dipstick, ticks on a meter. A rise of 18 °F is one of 10 °C. */
export function trendSize(by: QuantityNode, instrument: Instrument): Read<number> {
  const own = instrument.kind === 'dipstick' ? instrument.node.range.unit : instrument.node.unit;
  const unit = findUnit(own.text);
  if (unit === null) return { value: 0 };
  const read = differenceIn(by, unit, () => ({
    wanted: `a difference in ${unit.symbol}`,
    labels: [{ at: own.at, text: `\`${instrument.name}\` is in ${unit.symbol}` }],
  }));
  return mapRead(read, (value) => {
    if (instrument.kind === 'meter') return ticksOf(value);
    return instrument.kind === 'dipstick' ? value / instrument.node.range.number.value : value;
  });
}
