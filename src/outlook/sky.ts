import type { Day } from '../values/moment.js';
import { almanacOf } from './almanac.js';
import type { Almanac } from './almanac.js';
import { columnsOf } from './due-days.js';
import type { Columns } from './due-days.js';
import type { FuturesByMeter } from './use-futures.js';

/** What tasks are followed against, one for all tasks of a machine: the futures of its meters, and the time looked at. */
export interface Sky {
  readonly futures: FuturesByMeter;
  /** How many futures there are. */
  readonly count: number;
  /** Doings lie from the one to the other. */
  readonly now: Day;
  readonly to: Day;
  readonly almanac: Almanac;
  readonly columns: Columns;
}

/** The sky over some futures. */
export function skyOver(futures: FuturesByMeter, now: Day, to: Day): Sky {
  const count = Math.max(1, ...[...futures.values()].map((future) => future.count));
  return { futures, count, now, to, almanac: almanacOf(now, to), columns: columnsOf(count) };
}
