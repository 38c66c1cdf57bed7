/**
 * How often to look, from how failures announce themselves (NAVAIR 00-25-403).
 */

/**
 * How many looks must fall into the time from the first sign to the failure: ln(acceptable chance of missing all) / ln(1 − chance of seeing
 * the sign at one look). Not rounded.
 *
 * @param seeing chance of seeing the sign at one look, 0 to 1, both excluded.
 * @param missing acceptable chance that every look misses it, 0 to 1, both excluded.
 */
export function looksWithin(seeing: number, missing: number): number {
  return Math.log(missing) / Math.log(1 - seeing);
}

/**
 * The interval of inspections for a time `signToFailure` from the first sign to the failure, in its unit.
 *
 * @example inspectionInterval(100, 0.9, 0.001) // 33.3…
 */
export function inspectionInterval(signToFailure: number, seeing: number, missing: number): number {
  return signToFailure / looksWithin(seeing, missing);
}

/** Mean time between failures of items that were watched together: item-time over failures; `null` without a failure. */
export function meanTimeBetween(items: number, timeEach: number, failures: number): number | null {
  return failures > 0 ? (items * timeEach) / failures : null;
}

/**
 * How often to try a thing whose failure shows only when it is needed: twice the part of the time that it may be down × its mean time
 * between failures. Good for unavailabilities of at most about 5 %.
 *
 * @example failureFindingInterval(0.99, 10) // 0.2
 */
export function failureFindingInterval(availability: number, meanTime: number): number {
  return 2 * (1 - availability) * meanTime;
}
