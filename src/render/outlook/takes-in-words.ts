/**
 * What work takes, in words: supplies with what is missing, tools, time.
 */
import type { SupplyNeeded, WorkNeeded } from '../../outlook/supplies-needed.js';
import { durationText, numberText } from '../../values/number-text.js';
import { TICKS_PER_MINUTE } from '../../values/ticks.js';
import { counted } from '../count-in-words.js';
import { safeText } from '../safe-text.js';

/** `6.6 L`, `2` where it is counted in pieces. */
export function amountOf(amount: number, unit: string | null): string {
  return `${numberText(amount, 3)}${unit === null ? '' : ` ${safeText(unit)}`}`;
}

/** `6.6 L Engine oil SAE 15W-40 (4.6 L missing)`. */
export function supplyInWords({ title, unit, needed, missing, onShelf }: SupplyNeeded): string {
  const short = missing === 0 ? 'there' : onShelf === 0 ? '' : `${amountOf(missing, unit)} missing`;
  return `${amountOf(needed, unit)} ${safeText(title)}${short === '' ? '' : ` (${short})`}`;
}

/** The minutes of the tasks, with those that no time is on record of. */
export function timeInWords({ minutes, untimed }: WorkNeeded): string {
  const known = durationText(minutes * TICKS_PER_MINUTE);
  if (untimed.length === 0) return known;
  return minutes === 0 ? 'time not stated' : `${known}, with no time stated for ${counted(untimed.length, 'task')}`;
}
