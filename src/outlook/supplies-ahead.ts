import type { RuleGraph } from '../graph/rule-graph.js';
import type { Day, Moment } from '../values/moment.js';
import { coveringTasks, withoutCovered } from './covering.js';
import type { Outlook } from './outlook.js';
import { suppliesNeeded } from './supplies-needed.js';
import type { PlannedWork, WorkNeeded } from './supplies-needed.js';
import { workAhead } from './work-ahead.js';

/** What the work up to a day, or some tasks done once, take, less what is on the shelf. */
export interface SuppliesAhead {
  readonly format: 'duewright-supplies';
  readonly version: 1;
  readonly schedule: { readonly name: string; readonly fingerprint: string };
  readonly now: Moment;
  /** The time looked at; `null` where tasks were named. */
  readonly time: { readonly from: Day; readonly to: Day } | null;
  /** What half of the simulated courses of use take at most. */
  readonly likely: WorkNeeded;
  /** What nine in ten of them take at most, task by task; the same as `likely` where tasks were named. */
  readonly most: WorkNeeded;
}

/**
 * What to have on the shelf: for the time that an outlook looks at, or for `tasks` done once each.
 *
 * What comes with work, readings or events (a top-up, a repair) is not foreseen and not in it. What another task covers is not counted twice.
 *
 * @param shelf supply → how much is there, in the supply's unit.
 */
export function suppliesAhead(
  graph: RuleGraph,
  outlook: Pick<Outlook, 'now' | 'from' | 'to' | 'tasks'>,
  shelf: ReadonlyMap<string, number> = new Map(),
  tasks: readonly string[] = [],
): SuppliesAhead {
  const named: readonly PlannedWork[] = tasks.map((task) => ({ task, times: 1 }));
  const covering = coveringTasks(graph);
  const taken = (how: 'likely' | 'most'): WorkNeeded =>
    suppliesNeeded(graph, named.length > 0 ? named : withoutCovered(workAhead(outlook.tasks, how), covering), shelf);
  return {
    format: 'duewright-supplies',
    version: 1,
    schedule: { name: graph.schedule.name, fingerprint: graph.fingerprint },
    now: outlook.now,
    time: named.length > 0 ? null : { from: outlook.from, to: outlook.to },
    likely: taken('likely'),
    most: taken('most'),
  };
}
