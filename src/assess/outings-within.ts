import type { Outing } from '../history/timeline.js';
import type { Moment } from '../values/moment.js';
import type { World } from './world.js';

/**
 * The outings of which some part may lie between two moments (`null`: since ever, until now), in order; each counts as a step.
 *
 * Law: an outing that is left out ended on a day before the one moment or began on a day after the other. O(log n) and those.
 */
export function outingsWithin(world: World, from: Moment | null, to: Moment | null): readonly Outing[] {
  const { outings } = world.timeline;
  const first = from === null ? 0 : firstAfter(outings.length, (at) => (world.endedBy[at] ?? Infinity) >= from.day);
  const last = to === null ? outings.length : firstAfter(outings.length, (at) => (outings[at]?.when.day ?? Infinity) > to.day);
  const within = outings.slice(first, last);
  world.step(within.length);
  return within;
}

/** The first index below `length` from which on something holds; `length` where it never does. */
function firstAfter(length: number, holds: (index: number) => boolean): number {
  let [low, high] = [0, length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}
