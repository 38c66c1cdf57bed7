import type { Moment } from '../values/moment.js';
import { notBefore } from '../values/moment.js';
import type { Stamped } from './timeline.js';

/** The last of `items` (in order) that is not later than a moment; `null` if there is none. */
export function lastAt<T extends Stamped>(items: readonly T[], when: Moment): T | null {
  return items.findLast((item) => notBefore(when, item.when)) ?? null;
}
