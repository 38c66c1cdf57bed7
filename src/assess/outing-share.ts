import type { Outing } from '../history/timeline.js';
import { MINUTES_PER_DAY, type Moment, notBefore } from '../values/moment.js';
import type { World } from './world.js';

/** The share of an outing that lies after a moment. */
export function shareSince(world: World, outing: Outing, base: Moment | null): number {
  const end = outing.end ?? world.now;
  if (base === null || notBefore(outing.when, base)) return 1;
  return notBefore(end, base) ? shareAfter(outing.when, end, base) : 0;
}

/** The share of the time from `start` to `end` that lies after `cut`; all of it where the minutes are not known. */
function shareAfter(start: Moment, end: Moment, cut: Moment): number {
  if (start.minute === null || end.minute === null || cut.minute === null) return start.day < cut.day && end.day <= cut.day ? 0 : 1;
  const minute = (when: Moment): number => when.day * MINUTES_PER_DAY + (when.minute ?? 0);
  const length = minute(end) - minute(start);
  return length <= 0 ? 0 : Math.min(1, Math.max(0, (minute(end) - minute(cut)) / length));
}
