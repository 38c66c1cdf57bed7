/**
 * Rules that keep a beat (docs/meaning.md §4, "Counting"): work done late, or within its allowance, does not move the next due point.
 */
import type { LimitFacts } from '../assess/assessment.js';
import { marginAfter, marginBefore } from '../graph/calendar-amount.js';
import type { CalendarAmount, Counting, Margin } from '../graph/rule-graph.js';
import type { Day } from '../values/moment.js';
import { reachedBy, totalOn } from './course-days.js';
import { FAR } from './due-days.js';
import type { BringForward } from './due-days.js';
import { spanOn, spansAfter } from './almanac.js';
import type { Almanac } from './almanac.js';
import type { UseFutures } from './use-futures.js';

/** What a rule with a beat is made of, besides its span. */
export interface Beat {
  readonly count: Counting;
  readonly early: Margin;
  readonly late: Margin;
  /** 1 where the limit is reached only beyond its point, else 0. */
  readonly beyond: number;
  /** The limit as it stands now; `undefined` where there is none on record. */
  readonly limit: LimitFacts | undefined;
}

/** A beat of so many ticks: each future keeps the total at which the task next falls due. */
export function meterBeat(course: UseFutures, ticks: number, beat: Beat): BringForward {
  const due = beat.limit?.due;
  const points = new Float64Array(course.count).fill(due?.on === 'meter' ? due.ticks : Number.NaN);
  return ({ count, future, day }, into) => {
    for (let i = 0; i < count; i += 1) {
      const [f, at] = [future[i] ?? 0, day[i] ?? 0];
      const point = points[f] ?? Number.NaN;
      const total = totalOn(course, f, at);
      const kept = keepsBeat(beat, total, point, point - beat.early.size, point + beat.late.size);
      const next = (kept ? point : total) + ticks;
      points[f] = next;
      into[i] = reachedBy(course, f, next + beat.beyond, at, into[i] ?? 0);
    }
  };
}

/** A beat of calendar spans: each future keeps a day to count from, how many spans the next due day lies after it, and that day. */
export function calendarBeat(futures: number, almanac: Almanac, amount: CalendarAmount, beat: Beat): BringForward {
  const start = beatOf(beat.limit);
  const anchors = new Int32Array(futures).fill(start?.anchor ?? 0);
  const spans = new Int32Array(futures).fill(start?.spans ?? 0);
  const points = new Float64Array(futures).fill(start === null ? Number.NaN : spansAfter(start.anchor, amount, start.spans));
  return ({ count, future, day }, into) => {
    for (let i = 0; i < count; i += 1) {
      const [f, at] = [future[i] ?? 0, day[i] ?? 0];
      const point = points[f] ?? Number.NaN;
      const kept = keepsBeat(beat, at, point, marginBefore(point, beat.early), marginAfter(point, beat.late));
      const [anchor, times] = kept ? [anchors[f] ?? 0, (spans[f] ?? 0) + 1] : [at, 1];
      anchors[f] = anchor;
      spans[f] = times;
      const next = kept ? spansAfter(anchor as Day, amount, times) : oneSpanAfter(almanac, at as Day, amount, beat);
      points[f] = next;
      into[i] = Math.min(into[i] ?? 0, next + beat.beyond);
    }
  };
}

/** Looked up. What lies beyond the almanac matters only where work may be in time before its due day: by then the futures have ended. */
function oneSpanAfter(almanac: Almanac, day: Day, amount: CalendarAmount, { count }: Beat): number {
  const near = spanOn(almanac, day, amount);
  return near < FAR || count === 'due-if-late' ? near : spansAfter(day, amount, 1);
}

/** Whether work done at `value` leaves the beat as it is; never where the due point is not known (NaN). */
function keepsBeat({ count }: Beat, value: number, due: number, from: number, to: number): boolean {
  return count === 'due-if-late' ? value > due : value >= from && value <= to;
}

/** Where the beat stands now: what it counts from, and how many spans after that the next due day lies. */
function beatOf(limit: LimitFacts | undefined): { readonly anchor: Day; readonly spans: number } | null {
  const base = limit?.base;
  if (base?.point.on !== 'calendar' || limit?.due?.on !== 'calendar') return null;
  if (base.anchor?.point.on !== 'calendar') return { anchor: base.point.day, spans: 1 };
  return { anchor: base.anchor.point.day, spans: base.anchor.spans + 1 };
}
