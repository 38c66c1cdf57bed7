import type { LateStop } from '../reach.js';
import type { OrderOfParts, Part } from './whichever.js';

/** Whichever comes last: the least grave part speaks for the whole, and of those alike the last decides. */
export const lastOf: OrderOfParts = {
  speaks: ['clear', 'coming-up', 'unknown', 'unrecorded', 'due', 'overdue'],
  sign: -1,
  stops: stopsOfAll,
};

/** A hard stop applies once every part is beyond its own, and could apply while none is known to be short of it. */
function stopsOfAll(parts: readonly Part[]): readonly LateStop[] {
  if (parts.some(({ reach }) => reach.stops.length === 0)) return [];
  const all = parts.flatMap(({ reach }) => reach.stops);
  const certain = parts.every(({ reach }) => reach.stops.some(({ truth }) => truth === 'true'));
  return certain ? all : all.map((stop) => ({ ...stop, truth: 'unknown' as const }));
}
