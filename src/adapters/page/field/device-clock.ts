/// <reference lib="dom" />
import type { Moment } from '../../../engine.js';
import { dayNumber } from '../../../values/civil.js';
import type { Chance } from '../../logbook/entry-id.js';

/** The device's own clock, in its own time zone, to the minute: the only place where this page asks for the time. */
export function deviceNow(): Moment {
  const now = new Date();
  const day = dayNumber({ year: now.getFullYear(), month: now.getMonth() + 1, day: now.getDate() });
  return { day, minute: now.getHours() * 60 + now.getMinutes() };
}

/** Where the ids of entries take their time and chance from: the device's clock and its source of randomness. */
export const deviceChance: Chance = {
  now: () => Date.now(),
  // 2³² is a multiple of 32, the only bound that ids ask for: no remainder is favoured.
  random: (below) => (crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) % below,
};

/** Seconds since midnight, for a countdown. */
export function deviceSeconds(): number {
  const now = new Date();
  return (now.getHours() * 60 + now.getMinutes()) * 60 + now.getSeconds();
}
