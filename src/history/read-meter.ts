/**
 * The readings of one meter, from however many entries, as a track of those that count and a list of those that do not.
 */
import { newDial, type Reading } from './dial.js';
import type { Facts } from './facts.js';
import { byDay } from './by-day.js';
import { takeDay } from './take-day.js';
import type { MeterPoint, Suspect } from './timeline.js';

/** What became of the readings of a meter: those that count, in order, and those that do not. */
export interface MeterRead {
  readonly points: readonly MeterPoint[];
  readonly suspects: readonly Suspect[];
}

/**
 * Reads one meter (docs/meaning.md §2) in O(n log n).
 *
 * @param ticksPerDay ticks in 24 h if the meter counts time, else `null`: then it cannot rise too fast.
 * @param readings in any order, but for replacements, which are in the order of the history.
 * @param facts what replacements and confirmations are read by; needed where there are some.
 */
export function readMeter(meter: string, ticksPerDay: number | null, readings: readonly Reading[], facts: Partial<Facts>): MeterRead {
  const points: MeterPoint[] = [];
  const suspects: Suspect[] = [];
  const take = facts.dials?.takeDay ?? takeDay;
  let dial = newDial(meter, ticksPerDay);
  for (const day of byDay(readings)) {
    const taken = take(dial, day, facts);
    points.push(...taken.points);
    suspects.push(...taken.suspects);
    dial = taken.dial;
  }
  return { points, suspects };
}
