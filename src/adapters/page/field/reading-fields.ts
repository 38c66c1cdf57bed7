/// <reference lib="dom" />
/**
 * Fields for what a gauge, a dipstick or a meter shows.
 */
import type { Instrument } from '../../../engine.js';
import { choiceField, decimalOf, textField } from './controls.js';
import type { Field } from './field.js';

/** As an entry holds it: a gauge's value in its unit; a share of a dipstick from low to full, or where it stood. */
export type ReadingValue = number | 'below-low' | 'low' | 'full' | 'above-full';

const LEVELS: readonly (readonly [string, string])[] = [
  ['', 'Not read'],
  ['above-full', 'Above full'],
  ['full', 'At full'],
  ['0.75', 'Three quarters'],
  ['0.5', 'Half way'],
  ['0.25', 'A quarter'],
  ['low', 'At low'],
  ['below-low', 'Below low'],
];

/** A field for one instrument; `act` gets `null` while nothing is read. */
export function readingField(
  field: Field,
  { is, id }: Instrument,
  value: ReadingValue | null,
  act: (value: ReadingValue | null) => void,
): HTMLElement {
  if (is === 'dipstick') return dipstickField(field.names.dipsticks[id]?.title ?? id, value, act);
  const { title, unit } = field.names.gauges[id] ?? field.names.meters[id] ?? { title: id, unit: '' };
  const { root, input } = textField(`${title} (${unit})`, { inputmode: 'decimal', value: value === null ? '' : String(value) });
  input.addEventListener('change', () => act(decimalOf(input.value)));
  return root;
}

function dipstickField(title: string, value: ReadingValue | null, act: (value: ReadingValue | null) => void): HTMLElement {
  const { root, select } = choiceField(title, LEVELS);
  select.value = value === null ? '' : String(value);
  select.addEventListener('change', () => act(levelOf(select.value)));
  return root;
}

function levelOf(value: string): ReadingValue | null {
  if (value === 'below-low' || value === 'low' || value === 'full' || value === 'above-full') return value;
  return decimalOf(value);
}
