import type { Outing } from '../history/timeline.js';
import { minutesBetween, type Moment, notBefore } from '../values/moment.js';
import type { World } from './world.js';

/** The share of an outing that lies after a moment. */
export function shareSince(world: World, outing: Outing, base: Moment | null): number {
  const end = outing.end ?? world.now;
  if (base === null || notBefore(outing.when, base)) return 1;
  return notBefore(end, base) ? shareAfter(outing.when, end, base) : 0;
}

/** The share of the time from `start` to `end` that lies after `cut`; where the minutes do not tell, all of it if it ended on a later day. */
function shareAfter(start: Moment, end: Moment, cut: Moment): number {
  const [length, after] = [minutesBetween(start, end), minutesBetween(cut, end)];
  if (length === null || after === null) return end.day > cut.day ? 1 : 0;
  // INVARIANT: the cut lies after the start, and not after the end.
  return after / length;
}
