import type { Observation } from '../assess/assessment.js';
import type { StagesNode } from '../graph/rule-graph.js';
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
  if (start === undefined) return then;
  if (start.on === 'calendar') {
    const points = node.amounts.map((amount) => (amount.on === 'calendar' ? spansAfter(start.day, amount, 1) : Infinity));
    return stage(points, node.early.size, sky, then, { stands: (_, day) => day, reach: (_, point, __, until) => Math.min(point, until) });
  }
  const course = start.on === 'meter' ? sky.futures.get(start.meter) : undefined;
  if (start.on !== 'meter' || course === undefined) return NEVER;
  const points = node.amounts.map((amount) => (amount.on === 'meter' ? start.ticks + amount.ticks : Infinity));
  return stage(points, node.early.size, sky, then, meterAxis(course));
}

/** Where a future stands on a day, and when it gets to a point. */
interface StageAxis {
  readonly stands: (f: number, day: number) => number;
  readonly reach: (f: number, point: number, from: number, until: number) => number;
}

function meterAxis(course: UseFutures): StageAxis {
  return {
    stands: (f, day) => totalOn(course, f, day),
    reach: (f, point, from, until) => reachedBy(course, f, point, from, until),
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
