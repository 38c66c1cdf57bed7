/** Storage that stands in the way of a calendar limit (docs/meaning.md §4, "Storage that does not count"). */
import { dayAfter } from '../graph/calendar-amount.js';
import type { CalendarAmount } from '../graph/rule-graph.js';
import type { EntryId } from '../history/entry.js';
import type { Day } from '../values/moment.js';
import type { Measured } from './judge.js';
import { begunBy } from './spells.js';
import type { World } from './world.js';

/** A limit with its due point so many days later as were spent in storage. */
export function stoodStill(world: World, atLeast: CalendarAmount, measured: Measured): Measured {
  const { base, due } = measured;
  const { days, entries, goesOn, begun } = storedBetween(world, base.value as Day, due as Day, atLeast);
  if (days === 0 && !goesOn) return measured;
  return {
    ...measured,
    base: { ...base, entries: [...new Set([...base.entries, ...entries])] },
    due: due + days,
    note: { is: 'stood-still', days, goesOn },
    stood: begun.map((day) => ({ on: 'calendar', day, goodThrough: false })),
  };
}

/** Days in storage, the entries that tell of them, whether the machine is in storage still, and when each began: by its length it counts or does not. */
interface Stored {
  readonly days: number;
  readonly entries: readonly EntryId[];
  readonly goesOn: boolean;
  readonly begun: readonly Day[];
}

/**
 * The days that a limit from `base`, due on `due` if nothing stood in the way, stands still: storage of at least so long that began before
 * it fell due. Each puts it off, so that the next may begin before it falls due as well. Storage that goes on counts up to now.
 */
function storedBetween(world: World, base: Day, due: Day, atLeast: CalendarAmount): Stored {
  const { storage } = world.timeline;
  const entries: EntryId[] = [];
  let days = 0;
  let goesOn = false;
  const begun: Day[] = [];
  for (const [place, { begin, end }] of storage.entries()) {
    world.step();
    const [from, to] = [begin.when.day, end?.when.day ?? world.now.day];
    if (from >= due + days) break;
    // Storage that has only begun says already that the limit may stand still.
    goesOn = end === null;
    const isLong = dayAfter(from, atLeast) <= to;
    const within = isLong ? Math.max(0, to - Math.max(from, base)) : 0;
    if (within === 0 && !goesOn) continue;
    days += within;
    begun.push(from);
    entries.push(...begunBy(storage.slice(0, place + 1)), ...(end === null ? [] : [end.entry]));
  }
  return { days, entries, goesOn, begun };
}
