import type { Day } from '../values/moment.js';
import { TICKS_PER_UNIT } from '../values/ticks.js';
import type { Consumption } from './consumption.js';
import { rangeOfDays } from './forecast.js';
import type { DateRange } from './forecast.js';
import { normalQuantile } from './normal.js';
import { dayReached } from './course-days.js';
import type { UseFutures } from './use-futures.js';

/** Successive multiples of the golden ratio fill 0 to 1 evenly, however many there are. */
const GOLDEN = 0.618_033_988_749_895;

/**
 * About when a level stands at the low mark if nobody tops up: every future of use meets another rate of loss, spread as far as the rate is open.
 *
 * `null` where the rate has no interval, or the low mark is out of sight.
 *
 * @param now days before it are given as this day: the mark may have been passed since the last reading.
 */
export function timeToLow(used: Consumption, futures: UseFutures, now: Day): DateRange | null {
  const { value, range } = used.litresPerHour;
  if (range === null) return null;
  const spread = (range.high - range.low) / 2 / normalQuantile((1 + range.level) / 2);
  const days = new Float64Array(futures.count);
  for (let f = 0; f < futures.count; f += 1) {
    const rate = value + spread * normalQuantile((0.5 + f * GOLDEN) % 1);
    const total = used.at + (used.litresLeft / rate) * TICKS_PER_UNIT;
    days[f] = rate <= 0 ? Infinity : Math.max(now, dayReached(futures, f, total));
  }
  return rangeOfDays(days);
}
