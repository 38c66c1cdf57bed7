import { gather } from '../base/gather.js';
import type { Moment } from '../values/moment.js';

/** Items day by day, the days in order. */
export function byDay<T extends { readonly when: Moment }>(items: readonly T[]): readonly (readonly T[])[] {
  return [...gather(items, ({ when }) => when.day)].sort(([a], [b]) => a - b).map(([, day]) => day);
}
