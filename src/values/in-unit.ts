import { convert, findUnit } from './units.js';

/**
 * A value that somebody gave in a unit of their own, in the unit that it is kept in; `null` where the two do not measure the same thing.
 *
 * @example inUnit(200, 'g', 'kg') // 0.2
 */
export function inUnit(value: number, written: string, kept: string): number | null {
  if (written === kept) return value;
  const [from, to] = [findUnit(written), findUnit(kept)];
  return from === null || to === null ? null : convert(value, from, to);
}
