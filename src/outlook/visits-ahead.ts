import type { RuleGraph } from '../graph/rule-graph.js';
import type { Day } from '../values/moment.js';
import { bundle } from './bundling.js';
import type { Bundles } from './bundling.js';
import { coveringTasks, uncovered } from './covering.js';
import { openings } from './openings.js';
import { suppliesNeeded } from './supplies-needed.js';
import type { WorkNeeded } from './supplies-needed.js';
import type { TaskAhead, YearAhead } from './year-ahead.js';

/** One proposed visit to the machine. */
export interface VisitAhead {
  readonly day: Day;
  /** In the order of the schedule. */
  readonly tasks: readonly string[];
  /** Steps that open up for them. */
  readonly opens: readonly string[];
  readonly takes: WorkNeeded;
}

/** All proposed visits. */
export interface VisitsAhead {
  readonly visits: readonly VisitAhead[];
  /** What all of them take, less what is on the shelf. */
  readonly takes: WorkNeeded;
  /** Minutes of opening up and closing again. */
  readonly opening: number;
  /** Days by which tasks are brought forward, in all. */
  readonly thrownAway: number;
  /** Whether it is proved that no plan is better. */
  readonly proved: boolean;
  readonly method: string;
}

/** What the owner can choose about visits. */
export interface VisitOptions {
  /** How much of the time from one doing to the next may be thrown away by doing a task early; default 0.15. */
  readonly pull?: number;
  /** Supply → what is on the shelf. */
  readonly shelf?: ReadonlyMap<string, number>;
  /** Tasks to leave out: those that are part of each day's work, say. */
  readonly without?: ReadonlySet<string>;
}

const DEFAULT_PULL = 0.15;
/** Days that any task may come forward, if that is no more than half its round: nobody walks out twice for so little. */
const ALWAYS = 3;
const METHOD = 'exact: fewest visits, then least opening up, then least life thrown away; days as most likely';

/**
 * Proposes visits for the next doing of every task that has a date within the time looked at, each on its most likely day or earlier.
 */
export function visitsAhead(graph: RuleGraph, ahead: YearAhead, options: VisitOptions = {}): VisitsAhead {
  const { pull = DEFAULT_PULL, shelf = new Map<string, number>(), without = new Set<string>() } = options;
  const { of, minutes } = openings(graph);
  const tasks = ahead.tasks
    .filter(({ task, next }) => !without.has(task) && next?.likely !== null && next !== null)
    .map((task) => ({ id: task.task, ...windowOf(task, ahead.from, pull), opens: of.get(task.task) ?? [] }));
  const found: Bundles = bundle(tasks, minutes);
  const covering = coveringTasks(graph);
  const work = (visits: readonly (readonly string[])[]): WorkNeeded =>
    suppliesNeeded(
      graph,
      visits.flatMap((ids) => uncovered(ids, covering).map((task) => ({ task, times: 1 }))),
      shelf,
    );
  return {
    visits: found.visits.map(({ at, tasks: ids, opens }) => ({ day: at as Day, tasks: asWritten(graph, ids), opens, takes: work([ids]) })),
    takes: work(found.visits.map(({ tasks: ids }) => ids)),
    opening: found.opening,
    thrownAway: found.thrownAway,
    proved: found.proved,
    method: METHOD,
  };
}

/** From the earliest day on which it would be sensible to the day on which it most likely falls due. */
function windowOf({ next, later }: TaskAhead, now: Day, pull: number): { readonly from: number; readonly to: number } {
  const to = Math.max(now, next?.likely ?? now);
  const round = (later[0]?.likely ?? null) === null ? to - now : (later[0]?.likely ?? to) - to;
  const early = Math.max(pull * round, Math.min(ALWAYS, round / 2));
  return { from: Math.max(now, Math.ceil(to - early)), to };
}

/** In the order in which the schedule has them. */
function asWritten({ tasks }: RuleGraph, ids: readonly string[]): readonly string[] {
  const wanted = new Set(ids);
  return tasks.map(({ id }) => id).filter((id) => wanted.has(id));
}
