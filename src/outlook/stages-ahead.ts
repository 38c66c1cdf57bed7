import type { DuePoint, Observation } from '../assess/assessment.js';
import type { StagesNode } from '../graph/rule-graph.js';
import type { Day } from '../values/moment.js';
import { reachedBy, totalOn } from './course-days.js';
import { NEVER } from './due-days.js';
import type { BringForward } from './due-days.js';
import { spansAfter } from './almanac.js';
import type { Sky } from './sky.js';
import type { UseFutures } from './use-futures.js';

/**
 * A series of stages from a start that is on record, and what follows when all of them are met: a doing meets every stage that it does not come
 * too early for, and at least the first.
 */
export function stagesAhead(node: StagesNode, seen: Observation | undefined, sky: Sky, then: BringForward): BringForward {
  const start = seen?.limit?.base?.point;
  return start === undefined ? then : stagesFrom(node, start, sky, then);
}

/** As {@link stagesAhead}, from where the series starts: on its axis, or on a day at which its meter will stand nobody knows where. */
export function stagesFrom(node: StagesNode, start: StageStart, sky: Sky, then: BringForward): BringForward {
  const [first] = node.amounts;
  if (start.on === 'calendar' || (start.on === 'day-to-come' && first?.on === 'calendar')) {
    const points = node.amounts.map((amount) => (amount.on === 'calendar' ? spansAfter(start.day, amount, 1) : Infinity));
    return stage(points, node.early.size, sky, then, { stands: (_, day) => day, reach: (_, point, __, until) => Math.min(point, until) });
  }
  const meter = start.on === 'meter' ? start.meter : start.on === 'day-to-come' && first?.on === 'meter' ? first.meter : undefined;
  const course = meter === undefined ? undefined : sky.futures.get(meter);
  if (course === undefined) return NEVER;
  const points = node.amounts.map((amount) => (amount.on === 'meter' ? amount.ticks : Infinity));
  return stage(points, node.early.size, sky, then, meterAxis(course, start));
}

/** Where a series of stages starts. */
export type StageStart = DuePoint | { readonly on: 'day-to-come'; readonly day: Day };

/** Where a future stands on a day, and when it gets to a point. */
interface StageAxis {
  readonly stands: (f: number, day: number) => number;
  readonly reach: (f: number, point: number, from: number, until: number) => number;
}

/** Ticks since the start. */
function meterAxis(course: UseFutures, start: StageStart): StageAxis {
  const stood = (f: number): number =>
    start.on === 'meter' ? start.ticks : start.on === 'day-to-come' ? totalOn(course, f, start.day) : 0;
  return {
    stands: (f, day) => totalOn(course, f, day) - stood(f),
    reach: (f, point, from, until) => reachedBy(course, f, stood(f) + point, from, until),
  };
}

function stage(points: readonly number[], early: number, { columns }: Sky, then: BringForward, axis: StageAxis): BringForward {
  return (doings, due) => {
    const after = columns.lend();
    after.set(due);
    then(doings, after);
    for (let i = 0; i < doings.count; i += 1) {
      const [f, day] = [doings.future[i] ?? 0, doings.day[i] ?? 0];
      const met = Math.max(1, stagesMet(points, axis.stands(f, day) + early));
      const open = points[met];
      due[i] = open === undefined ? (after[i] ?? 0) : axis.reach(f, open, day, due[i] ?? 0);
    }
    columns.giveBack(after);
  };
}

function stagesMet(points: readonly number[], upTo: number): number {
  let met = 0;
  for (const point of points) if (point <= upTo) met += 1;
  return met;
}
