/**
 * Which tasks to do together: the fewest visits, then the least opening up, then the least life thrown away.
 */
import { PlacingSearch } from './placing.js';
import type { Budget, Placing } from './placing.js';
import { visitTimes } from './visit-times.js';

/** A task that can be done at any point of a window; points are numbers on one axis (days, or ticks of one meter). */
export interface BundledTask {
  readonly id: string;
  readonly from: number;
  /** The last point; doing it earlier throws away the life from then to here. */
  readonly to: number;
  /** What has to be opened up for it; several tasks of one visit share it. */
  readonly opens: readonly string[];
}

/** One visit, with what is done and opened up at it. */
export interface Visit {
  readonly at: number;
  readonly tasks: readonly string[];
  readonly opens: readonly string[];
}

/** The best plan, and what it costs. */
export interface Bundles {
  readonly visits: readonly Visit[];
  /** Sum over visits of what is opened up, in the unit of the costs. */
  readonly opening: number;
  /** Sum over tasks of `to` − when it is done. */
  readonly thrownAway: number;
  /** Whether it is proved that nothing is better; false where the search was cut short. */
  readonly proved: boolean;
  readonly steps: number;
}

/**
 * Bundles tasks into visits, exactly: the visits are as few as the windows allow; of all such plans the one that opens up least, and of those the
 * one that throws away least. Where plans tie, the later visits win.
 *
 * It suffices to look at visits on the last points of windows: moving a visit later up to the first of those loses nothing.
 *
 * @param cost what it takes to open something up once and close it again, in minutes say; what is not in it costs nothing.
 * @param budget steps of the search; beyond them the best plan found is returned, not `proved`.
 * @example five windows [40,60] [45,55] [58,70] [66,80] [90,110] → visits at 55, 70 and 110
 */
export function bundle(tasks: readonly BundledTask[], cost: ReadonlyMap<string, number> = new Map(), budget = 200_000): Bundles {
  const sorted = [...tasks]
    .map((task) => ({ ...task, opens: [...new Set(task.opens)] }))
    .sort((a, b) => a.to - b.to || a.from - b.from || (a.id < b.id ? -1 : 1));
  const left: Budget = { left: budget };
  let [best, proved]: [Placing | null, boolean] = [null, true];
  for (const visits of visitTimes(sorted)) {
    ({ best, proved } = new PlacingSearch(sorted, visits, cost, left, best).run());
    if (!proved) break;
  }
  const steps = budget - Math.max(0, left.left);
  if (best === null) return { visits: [], opening: 0, thrownAway: 0, proved, steps };
  return { visits: laidOut(sorted, best), opening: best.opening, thrownAway: best.thrownAway, proved, steps };
}

function laidOut(tasks: readonly BundledTask[], { at }: Placing): readonly Visit[] {
  const times = [...new Set(at)].sort((a, b) => a - b);
  return times.map((time) => {
    const here = tasks.filter((_, index) => at[index] === time);
    return { at: time, tasks: here.map(({ id }) => id).sort(), opens: [...new Set(here.flatMap(({ opens }) => opens))].sort() };
  });
}
