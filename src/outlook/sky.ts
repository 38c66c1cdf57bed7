import type { Day } from '../values/moment.js';
import { almanacOf } from './almanac.js';
import type { Almanac } from './almanac.js';
import { columnsOf } from './due-days.js';
import type { Columns } from './due-days.js';
import type { DateRange } from './forecast.js';
import type { FuturesByMeter } from './use-futures.js';

/** What tasks are followed against, one for all tasks of a machine: the futures of its meters, and the time looked at. */
export interface Sky {
  readonly futures: Pick<FuturesByMeter, 'get'>;
  /** How many futures there are. */
  readonly count: number;
  /** Doings lie from the one to the other. */
  readonly now: Day;
  readonly to: Day;
  readonly almanac: Almanac;
  readonly columns: Columns;
  /** A count for each day from the one to the other. Whoever uses it leaves it at nought. */
  readonly tally: Int32Array;
  /** The range that is one day, for each day after `now` that was asked for: the same few hundred for thousands of tasks. */
  readonly oneDay: (DateRange | undefined)[];
}

/** The sky over some futures. */
export function skyOver(futures: FuturesByMeter, now: Day, to: Day): Sky {
  const count = Math.max(1, ...[...futures.values()].map((future) => future.count));
  return {
    futures,
    count,
    now,
    to,
    almanac: almanacOf(now, to),
    columns: columnsOf(count),
    tally: new Int32Array(to - now + 1),
    oneDay: [],
  };
}

/**
 * What is made under a sky, and the sky to follow it along: where nothing in it asked for the use of a meter that is known, all futures are alike, and
 * one stands for them.
 */
export function asFewFutures<T>(sky: Sky, make: (sky: Sky) => T): { readonly made: T; readonly along: Sky } {
  let depends = false;
  const noUse = (meter: string): undefined => {
    depends ||= sky.futures.get(meter) !== undefined;
  };
  const alike: Sky = { ...sky, futures: { get: noUse }, count: 1, columns: columnsOf(1) };
  const made = make(alike);
  return depends ? { made: make(sky), along: sky } : { made, along: alike };
}
