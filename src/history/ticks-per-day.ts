import type { Meter } from '../graph/rule-graph.js';
import { TICKS_PER_UNIT } from '../values/ticks.js';

/** How many of each unit of time a day has; a test holds them to the table of units. */
const IN_A_DAY: Readonly<Record<string, number>> = { h: 24, min: 1440, s: 86_400 };

/** Ticks of a meter's unit in 24 hours; `null` if it does not count time. */
export function ticksPerDay({ unit }: Pick<Meter, 'unit'>): number | null {
  return Object.hasOwn(IN_A_DAY, unit) ? (IN_A_DAY[unit] ?? 0) * TICKS_PER_UNIT : null;
}
