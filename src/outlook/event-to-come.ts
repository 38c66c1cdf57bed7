/**
 * What comes after an event of a day that is still to come, as of a directive that takes effect next month.
 */
import type { Observation } from '../assess/assessment.js';
import type { Amount, EventNode, StagesNode } from '../graph/rule-graph.js';
import type { Day } from '../values/moment.js';
import { spansAfter } from './almanac.js';
import { reachedBy, totalOn } from './course-days.js';
import { FAR } from './due-days.js';
import type { BringForward } from './due-days.js';
import type { Sky } from './sky.js';
import { stagesFrom } from './stages-ahead.js';

/** The day on which a rule's event will happen; `null` where it has, or nobody knows. */
export function dayToCome(seen: Observation | undefined): Day | null {
  return seen?.note?.is === 'not-happened' ? (seen.note.on ?? null) : null;
}

/** The day on which so much has passed since a day to come, in a future; not after `until`. */
export type DayAfter = (future: number, until: number) => number;

/** `null` where that cannot be foreseen. With no amount it is the day itself. */
export function dayAfter(on: Day, amount: Amount | undefined, sky: Sky): DayAfter | null {
  if (amount?.on === 'work') return null;
  if (amount?.on !== 'meter') {
    const day = amount === undefined ? on : spansAfter(on, amount, 1);
    return day === FAR ? null : (_, until) => Math.min(until, day);
  }
  const course = sky.futures.get(amount.meter);
  return course === undefined ? null : (f, until) => reachedBy(course, f, totalOn(course, f, on) + amount.ticks, on, until);
}

/** After doings before the event it falls due with the event; a later doing answers it. */
export function eventToCome(node: EventNode, on: Day, sky: Sky): BringForward {
  return broughtForward(on, dayAfter(on, node.within, sky));
}

/** Stages that begin with the event: until then what follows them goes on, and the first comes besides. */
export function stagesToCome(node: StagesNode, on: Day, sky: Sky, then: BringForward): BringForward {
  const { columns } = sky;
  let next: Int32Array = new Int32Array();
  // Asked once for each round, as whatever keeps a beat has to be.
  const asNext: BringForward = ({ count }, due) => {
    for (let i = 0; i < count; i += 1) due[i] = Math.min(due[i] ?? 0, next[i] ?? 0);
  };
  const before = broughtForward(on, dayAfter(on, node.amounts[0], sky));
  const since = stagesFrom(node, { on: 'day-to-come', day: on }, sky, asNext);
  return (doings, due) => {
    next = columns.lend();
    const after = columns.lend();
    next.set(due);
    then(doings, next);
    after.set(due);
    since(doings, after);
    asNext(doings, due);
    before(doings, due);
    for (let i = 0; i < doings.count; i += 1) if ((doings.day[i] ?? 0) >= on) due[i] = after[i] ?? 0;
    columns.giveBack(next);
    columns.giveBack(after);
  };
}

function broughtForward(on: Day, reached: DayAfter | null): BringForward {
  return ({ count, future, day }, due) => {
    if (reached === null) return;
    for (let i = 0; i < count; i += 1) if ((day[i] ?? 0) < on) due[i] = reached(future[i] ?? 0, due[i] ?? 0);
  };
}
