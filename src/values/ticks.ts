/**
 * Meter quantities and times at work as whole ticks, so that sums and comparisons are exact.
 *
 * A tick is 1/36000 of the unit: of an hour it is 0.1 s, so that 1 s, 1 min and the 0.05 h of common hour meters are whole.
 */

/** Ticks in one of a unit. */
export const TICKS_PER_UNIT = 36_000;
/** Ticks of an hour in a minute. */
export const TICKS_PER_MINUTE = 600;

/**
 * A decimal as the nearest whole number of ticks, a half upwards; `null` for text that is no decimal or is too large to be exact.
 *
 * Works on the digits, not on a binary fraction.
 *
 * @example parseTicks('1299.95') // 46798200
 */
export function parseTicks(text: string): number | null {
  const match = /^(-?)(\d{1,15})(?:\.(\d{1,15}))?$/.exec(text);
  if (match === null) return null;
  const fraction = match[3] ?? '';
  const scale = 10n ** BigInt(fraction.length);
  const scaled = BigInt(`${match[2] ?? '0'}${fraction}`) * BigInt(TICKS_PER_UNIT);
  const ticks = Number((scaled * 2n + scale) / (scale * 2n));
  if (!Number.isSafeInteger(ticks)) return null;
  return match[1] === '-' && ticks !== 0 ? -ticks : ticks;
}

/** A number in units as the nearest whole number of ticks. */
export function ticksOf(value: number): number {
  return Math.round(value * TICKS_PER_UNIT);
}

/** Ticks as a number in units. */
export function unitsOf(ticks: number): number {
  return ticks / TICKS_PER_UNIT;
}
