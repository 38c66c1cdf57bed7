/**
 * What work takes: amounts of a supply in the supply's unit, torques in newton metres.
 */
import type { QuantityNode, UsesNode } from '../../syntax/tree.js';
import { findUnit } from '../../values/units.js';
import type { DefinitionOf } from '../model.js';
import { problem, type Read } from './read.js';
import { quantityIn } from './units.js';

/** How much of a supply is used, in the unit in which the supply is kept. */
export function suppliedAmount(item: UsesNode['items'][number], supply: DefinitionOf<'supply'>): Read<number> {
  const kept = supply.node.unit;
  const labels = [
    {
      at: kept?.at ?? supply.at,
      text: kept === undefined ? `\`${supply.name}\` is counted by the piece` : `\`${supply.name}\` is kept in ${kept.text}`,
    },
  ];
  if (!(item.number.value > 0))
    return problem('impossibleNumber', { at: item.number.at, message: 'A task has to use more than nothing of a supply.' });
  if (kept === undefined) {
    if (item.unit === undefined || item.unit.text === 'each') return { value: item.number.value };
    return problem('wrongUnit', {
      at: item.unit.at,
      message: `\`${supply.name}\` is counted by the piece, and takes no unit.`,
      labels,
      help: 'Leave the unit out: `1 oil-filter`.',
    });
  }
  if (item.unit === undefined) {
    return problem('wrongUnit', {
      at: item.at,
      message: `How much of \`${supply.name}\` is used needs a unit.`,
      labels,
      help: `Write it in ${kept.text}.`,
    });
  }
  const unit = findUnit(kept.text);
  if (unit === null) return { value: item.number.value };
  return quantityIn({ kind: 'quantity', at: item.at, number: item.number, unit: item.unit }, unit, () => ({
    wanted: `an amount in ${unit.symbol}`,
    labels,
  }));
}

/** A torque in N·m. */
export function newtonMetresOf(torque: QuantityNode): Read<number> {
  const unit = findUnit('N·m');
  if (unit === null) throw new Error('the table of units has lost its newton metre');
  return quantityIn(torque, unit, () => ({ wanted: 'a torque', help: 'Write it in N·m or lbf·ft.' }));
}

/** What a dipstick holds from low to full, in litres. */
export function litresOf(range: QuantityNode): Read<number> {
  const unit = findUnit('L');
  if (unit === null) throw new Error('the table of units has lost its litre');
  if (!(range.number.value > 0))
    return problem('emptySpan', { at: range.number.at, message: 'From low to full has to be more than nothing.' });
  return quantityIn(range, unit, () => ({
    wanted: 'a volume',
    help: 'Write what it takes to fill up from low to full, for example `1.2 L`.',
  }));
}
