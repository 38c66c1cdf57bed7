/**
 * Which tasks to do together: the fewest visits, then the least opening up, then the least life thrown away.
 */
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

export interface Visit {
  readonly at: number;
  readonly tasks: readonly string[];
  readonly opens: readonly string[];
}

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

/** What to beat: the best found so far. */
interface Best {
  opening: number;
  thrownAway: number;
  plan: readonly Placed[] | null;
}

interface Placed {
  readonly task: BundledTask;
  readonly visit: number;
}

interface Budget {
  left: number;
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
  const sorted = [...tasks].sort((a, b) => a.to - b.to || a.from - b.from || (a.id < b.id ? -1 : 1));
  const best: Best = { opening: Infinity, thrownAway: Infinity, plan: null };
  const left: Budget = { left: budget };
  let proved = true;
  for (const visits of visitTimes(sorted)) {
    proved = place(sorted, visits, cost, best, left) && proved;
    if (!proved) break;
  }
  return {
    ...laidOut(best.plan ?? []),
    opening: best.plan === null ? 0 : best.opening,
    thrownAway: best.plan === null ? 0 : best.thrownAway,
    proved,
    steps: budget - left.left,
  };
}

/** Tries every way to place the tasks on these visits that could beat `best`; false when the budget ran out. */
function place(
  tasks: readonly BundledTask[],
  visits: readonly number[],
  cost: ReadonlyMap<string, number>,
  best: Best,
  budget: Budget,
): boolean {
  const choices = tasks.map((task) => visits.flatMap((at, visit) => (at >= task.from && at <= task.to ? [visit] : [])).reverse());
  const order = tasks.map((_, index) => index).sort((a, b) => (choices[a]?.length ?? 0) - (choices[b]?.length ?? 0) || a - b);
  // The least life that the tasks from here on throw away, each on its latest visit.
  const least = new Array<number>(order.length + 1).fill(0);
  for (let i = order.length - 1; i >= 0; i -= 1) {
    const index = order[i] ?? 0;
    least[i] = (least[i + 1] ?? 0) + (tasks[index]?.to ?? 0) - (visits[choices[index]?.[0] ?? 0] ?? 0);
  }
  const open = visits.map(() => new Map<string, number>());
  const plan: Placed[] = [];
  const descend = (depth: number, opening: number, thrown: number): boolean => {
    budget.left -= 1;
    if (budget.left < 0) return best.plan === null && depth < order.length ? greedy(depth, opening, thrown) : false;
    if (opening > best.opening || (opening === best.opening && thrown + (least[depth] ?? 0) >= best.thrownAway)) return true;
    const index = order[depth];
    const task = index === undefined ? undefined : tasks[index];
    if (index === undefined || task === undefined) {
      Object.assign(best, { opening, thrownAway: thrown, plan: [...plan] });
      return true;
    }
    for (const visit of choices[index] ?? []) if (!step(task, visit, depth, opening, thrown)) return false;
    return true;
  };
  const step = (task: BundledTask, visit: number, depth: number, opening: number, thrown: number): boolean => {
    const opened = open[visit] ?? new Map<string, number>();
    const added = task.opens.filter((what) => !opened.has(what));
    for (const what of added) opened.set(what, depth);
    plan.push({ task, visit: visits[visit] ?? task.to });
    const more = [...new Set(added)].reduce((sum, what) => sum + (cost.get(what) ?? 0), 0);
    const fine = descend(depth + 1, opening + more, thrown + task.to - (visits[visit] ?? task.to));
    plan.pop();
    for (const what of added) opened.delete(what);
    return fine;
  };
  // Out of steps before any plan was found: the latest visit for each task that is left is still a plan.
  const greedy = (depth: number, opening: number, thrown: number): boolean => {
    const rest = order.slice(depth).map((index) => ({ task: tasks[index], visit: visits[choices[index]?.[0] ?? 0] ?? 0 }));
    const whole = [...plan, ...rest.flatMap(({ task, visit }) => (task === undefined ? [] : [{ task, visit }]))];
    const laid = laidOut(whole).visits;
    const cost0 = laid.reduce((sum, visit) => sum + visit.opens.reduce((all, what) => all + (cost.get(what) ?? 0), 0), 0);
    Object.assign(best, { opening: Math.max(opening, cost0), thrownAway: thrown + (least[depth] ?? 0), plan: whole });
    return false;
  };
  return descend(0, 0, 0);
}

function laidOut(plan: readonly Placed[]): { readonly visits: readonly Visit[] } {
  const times = [...new Set(plan.map(({ visit }) => visit))].sort((a, b) => a - b);
  const visits = times.map((at) => {
    const tasks = plan.filter(({ visit }) => visit === at).map(({ task }) => task);
    return { at, tasks: tasks.map(({ id }) => id).sort(), opens: [...new Set(tasks.flatMap(({ opens }) => opens))].sort() };
  });
  return { visits };
}
