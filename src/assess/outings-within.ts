import { firstIndex } from '../base/first-index.js';
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
  const first = from === null ? 0 : firstIndex(outings.length, (at) => (lastEnds(world)[at] ?? Infinity) >= from.day);
  const last = to === null ? outings.length : firstIndex(outings.length, (at) => (outings[at]?.when.day ?? Infinity) > to.day);
  const within = outings.slice(first, last);
  world.step(within.length);
  return within;
}

const known = new WeakMap<World, readonly number[]>();

/** Outing by outing, the last day on which it or any before it ended (now's, where one is under way): never falling, though ends may. */
function lastEnds(world: World): readonly number[] {
  let last = -Infinity;
  const ends = known.get(world) ?? world.timeline.outings.map(({ end }) => (last = Math.max(last, (end ?? world.now).day)));
  known.set(world, ends);
  return ends;
}
