import type { EntryId } from '../../engine.js';

/** Where ids and lock files take their time and chance from; tests and embedders bring their own. */
export interface Chance {
  /** Milliseconds since 1970. */
  readonly now: () => number;
  /** A whole number from 0 up to, not including, `below`. */
  readonly random: (below: number) => number;
}

// Crockford's base 32: no i, l, o, u, so that an id can be read out over the telephone.
const DIGITS = '0123456789abcdefghjkmnpqrstvwxyz';
const TIME_DIGITS = 9;
const CHANCE_DIGITS = 7;
const SHAPE = new RegExp(`^([${DIGITS}]{${TIME_DIGITS}})-[${DIGITS}]{${CHANCE_DIGITS}}$`);
/** The year 2200: a clock that says more is wrong, and must not use up the room above. */
const BEYOND = 7_258_118_400_000;

/**
 * A new id: nine digits of time, seven of chance, as in `1jw3k8m2a-x7q4f0t`.
 *
 * INVARIANT: it sorts after every id of the same shape in `taken`, whatever the clock says: a clock that jumped back goes on from
 * the latest id, one millisecond further. Two machines that write in the same millisecond differ by chance (1 in 3 × 10¹⁰).
 */
export function newEntryId(chance: Chance, latest: number): { readonly id: EntryId; readonly time: number } {
  const time = Math.max(plausible(chance.now()), latest + 1);
  let random = '';
  for (let digit = 0; digit < CHANCE_DIGITS; digit += 1) random += DIGITS[chance.random(32)] ?? '0';
  return { id: `${base32(time)}-${random}`, time };
}

/** The time inside an id that {@link newEntryId} made, or `null` for an id of another shape. */
export function timeOfId(id: EntryId): number | null {
  const digits = SHAPE.exec(id)?.[1];
  if (digits === undefined) return null;
  return Array.from(digits).reduce((sum, digit) => sum * 32 + DIGITS.indexOf(digit), 0);
}

/** The latest time among ids of our shape, −1 when there is none. */
export function latestTime(ids: Iterable<EntryId>): number {
  let latest = -1;
  for (const id of ids) latest = Math.max(latest, timeOfId(id) ?? -1);
  return latest;
}

function base32(value: number): string {
  let digits = '';
  for (let rest = value; digits.length < TIME_DIGITS; rest = Math.floor(rest / 32)) digits = (DIGITS[rest % 32] ?? '0') + digits;
  return digits;
}

function plausible(time: number): number {
  return time >= 0 && time < BEYOND ? Math.floor(time) : 0;
}
