/**
 * The quantities of an occasion, in a task and in what an example names as a reason.
 */
import type { OccasionWhat } from '../../syntax/tree.js';
import type { Home, Model } from '../model.js';
import { delayOf } from './amount.js';
import { clockMinutesOf } from './clock-minutes.js';
import type { Read } from './read.js';

/** The span of `within …`, where the occasion has one: by the clock before a start, of any kind after something. */
export function readingsInOccasion(model: Model, home: Home, what: OccasionWhat): readonly (Read<unknown> | undefined)[] {
  if (what.when === 'shortly-before') return [clockMinutesOf(what.within)];
  return what.when === 'event' && what.within !== undefined ? [delayOf(model, home, what.within)] : [];
}
