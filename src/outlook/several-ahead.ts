/**
 * When rules that ask for so many doings fall due after one more (docs/meaning.md §4, "So many times", "Apart").
 *
 * It is taken that nobody does a task in vain: where one more would come too soon to count, it is done on the day from which it counts.
 */
import type { DuePoint, Observation } from '../assess/assessment.js';
import { assertNever } from '../base/assert-never.js';
import { dayAfter } from '../graph/calendar-amount.js';
import type { CalendarAmount, CalendarMarksNode, IntervalNode, Node } from '../graph/rule-graph.js';
import type { Day } from '../values/moment.js';
import { spansAfter } from './almanac.js';
import { reachedBy, totalOn } from './course-days.js';
import { lookUp } from './day-table.js';
import type { DayTable } from './day-table.js';
import { NEVER } from './due-days.js';
import type { BringForward } from './due-days.js';
import { markNotMet } from './mark-not-met.js';
import type { Sky } from './sky.js';

/** The last so many doings that count, by where the axis stood at each (NaN: nobody knows), and the first day on which one more counts. */
interface Counted {
  readonly stood: readonly number[];
  readonly from: number;
}

/** The first day on which one more doing counts, by the record; −Infinity where any does. */
export function countsFrom(node: Node, seen: Observation | undefined): number {
  const apart = node.kind === 'interval' || node.kind === 'calendar-marks' ? node.apart : undefined;
  const last = lastOnRecord(seen);
  return apart === undefined || last === undefined ? -Infinity : dayAfter(last, apart);
}

function lastOnRecord(seen: Observation | undefined): Day | undefined {
  if (seen?.note?.is === 'doings-counted') return seen.note.counted.findLast(({ when }) => when !== null)?.when?.day;
  const point = seen?.stood?.at(-1);
  return point?.on === 'calendar' ? point.day : undefined;
}

/** So many doings within a span: counts from the first of the last of them, and while there are fewer from the machine's start. */
export function oftenWithin(node: IntervalNode, seen: Observation | undefined, sky: Sky): BringForward {
  const { amount, doings: times = 1 } = node;
  const beyond = node.strict ? 1 : 0;
  const known = seen?.note?.is === 'doings-counted' ? seen.note.counted.map(({ at }) => standsAt(at)) : [];
  const count = counting(times, node.apart, { stood: known, from: countsFrom(node, seen) });
  const start = startOf(seen);
  const base = ({ stood }: Counted): number => (stood.length < times ? start : (stood[0] ?? Number.NaN));
  switch (amount.on) {
    case 'work':
      return NEVER;
    case 'meter': {
      const course = sky.futures.get(amount.meter);
      if (course === undefined) return NEVER;
      return each((f, day, until) => {
        const counted = count(f, day, totalOn(course, f, day));
        const point = base(counted) + amount.ticks + beyond;
        return Number.isNaN(point) ? until : Math.max(counted.from, reachedBy(course, f, point, day, until));
      });
    }
    case 'calendar':
      return each((f, day, until) => {
        const counted = count(f, day, day);
        const from = base(counted);
        return Number.isNaN(from) ? until : Math.max(counted.from, spansAfter(from as Day, amount, 1) + beyond);
      });
    default:
      return assertNever(amount);
  }
}

/** Marks that so many doings meet, each on or after the first day of its margin; while there are fewer, from the machine's start or the first of them on. */
export function oftenEnough(node: CalendarMarksNode, seen: Observation | undefined, marks: DayTable, { now }: Sky): BringForward {
  const times = node.doings ?? 1;
  const count = counting(times, node.apart, { stood: (seen?.stood ?? []).map(standsAt), from: countsFrom(node, seen) });
  const start = startOf(seen);
  const owed = (stood: readonly number[]): number => {
    const first = stood[0] ?? now;
    if (stood.length < times) return markNotMet({ ...node, early: { size: 0 } }, (Number.isNaN(start) ? first - 1 : start) as Day);
    return first >= now ? lookUp(marks, first) : markNotMet(node, first as Day);
  };
  return each((f, day) => {
    const { stood, from } = count(f, day, day);
    return Math.max(from, owed(stood));
  });
}

/** Brings forward what a rule says of one future after a doing on a day, if that is before `until`. */
function each(next: (future: number, day: number, until: number) => number): BringForward {
  return ({ count, future, day }, due) => {
    for (let i = 0; i < count; i += 1) {
      const until = due[i] ?? 0;
      due[i] = Math.min(until, next(future[i] ?? 0, day[i] ?? 0, until));
    }
  };
}

/** Keeps the last so many doings of each future that count, after one more on a day; `known`: those on record. */
function counting(times: number, apart: CalendarAmount | undefined, known: Counted): (f: number, day: number, stands: number) => Counted {
  const futures = new Map<number, Counted>();
  return (f, day, stands) => {
    const before = futures.get(f) ?? known;
    if (day < before.from) return before;
    const from = apart === undefined ? -Infinity : dayAfter(day as Day, apart);
    const after = { stood: [...before.stood, stands].slice(-times), from };
    futures.set(f, after);
    return after;
  };
}

/** Where the machine's start stands, if the limit counts from it. */
function startOf(seen: Observation | undefined): number {
  const base = seen?.limit?.base;
  return base?.why === 'start' ? standsAt(base.point) : Number.NaN;
}

function standsAt(point: DuePoint | null): number {
  if (point?.on === 'meter') return point.ticks;
  return point?.on === 'calendar' ? point.day : Number.NaN;
}
