import { worldOf } from '../assess/assess.js';
import { assessTask, type TaskResult } from '../assess/assess-task.js';
import type { Assessment, AssessOptions, Observation, TaskAssessment, Hold } from '../assess/assessment.js';
import { composeAssessment } from '../assess/compose-assessment.js';
import { stopHolds } from '../assess/stop-holds.js';
import type { RuleGraph } from '../graph/rule-graph.js';
import { dateEntry } from '../history/dated-entry.js';
import type { Entry, EntryId } from '../history/entry.js';
import { everyFact } from '../history/every-fact.js';
import { type LaidOut, laidOut } from '../history/lay-out.js';
import type { Timeline } from '../history/timeline.js';
import { countsAt, type Moment } from '../values/moment.js';
import { type Dependencies, dependenciesOf } from './dependencies.js';
import { type Facet, NOW } from './facet.js';
import { isSame } from './is-same.js';
import { passTime, takeIn } from './take-in.js';
import { differing, reachOf } from './touched.js';

/** A task that is in another state than before, and what made it so. */
export interface TaskChange {
  readonly task: string;
  readonly before: TaskAssessment;
  readonly after: TaskAssessment;
  readonly why: {
    /** Entries that came to count since, and reach into what the task depends on. */
    readonly entries: readonly EntryId[];
    /** Whether time has passed, and the task depends on it. */
    readonly time: boolean;
  };
}

/** What became of a machine after an entry, or as time passed. */
export interface WatchStep {
  readonly assessment: Assessment;
  readonly changed: readonly TaskChange[];
  /** The tasks that were worked out anew; for the others nothing that they depend on was touched. */
  readonly again: readonly string[];
}

/** All that one look left behind. */
interface Look {
  readonly now: Moment;
  readonly entries: readonly Entry[];
  readonly laid: LaidOut;
  readonly results: readonly TaskResult[];
  readonly stops: readonly Hold[];
  readonly stopRecord: readonly Observation[];
  readonly assessment: Assessment;
}

/**
 * Keeps an eye on one machine: after a new entry, or as time passes, only what depends on it is worked out anew.
 *
 * What is spared is the work on tasks that see none of the difference, and laying out the history again, where an entry says only of the things
 * that it names (a void, a confirmation, an outing, a reading that puts others in doubt may reach far back). The assessment equals that of `assess` for the same
 * entries at the same moment, but for `steps`: it counts those taken this time, and a budget holds for each look.
 *
 * @throws BudgetError as `assess` does; the watch then stands where it stood.
 * @example
 * const machine = watch(graph, entries, now);
 * for (const { task, before, after } of machine.add(entry).changed) tell(task, before.state, after.state);
 */
export class Watch {
  private look: Look;
  private readonly dependencies: Dependencies;

  constructor(
    private readonly graph: RuleGraph,
    entries: readonly Entry[],
    now: Moment,
    private readonly options: AssessOptions,
  ) {
    this.dependencies = dependenciesOf(graph, options);
    this.look = this.lookAt(entries, now, null).look;
  }

  /** As of the last look. */
  get assessment(): Assessment {
    return this.look.assessment;
  }

  /** The entries so far. */
  get entries(): readonly Entry[] {
    return this.look.entries;
  }

  /** Takes in more entries, at the moment of the last look or at another. */
  add(more: Entry | readonly Entry[], now: Moment = this.look.now): WatchStep {
    const added = 'kind' in more ? [more] : more;
    return this.step([...this.look.entries, ...added], now, added);
  }

  /** Looks again at another moment, later or earlier. */
  at(now: Moment): WatchStep {
    return this.step(this.look.entries, now, []);
  }

  private step(entries: readonly Entry[], now: Moment, added: readonly Entry[]): WatchStep {
    const before = this.look;
    const { look, again } = this.lookAt(entries, now, before);
    this.look = look;
    const moved = !isSame(before.now, now);
    const arrived = moved ? [...added, ...entries.filter((entry) => countsOnce(entry, before.now, now))] : added;
    const byId = new Map(entries.map((entry) => [entry.id, entry]));
    const reaches = arrived.map((entry) => ({ id: entry.id, facets: reachOf(this.graph, entry, byId) }));
    const changed = again.flatMap((index): TaskChange[] => {
      const [old, fresh] = [before.results[index]?.assessment, look.results[index]?.assessment];
      if (old === undefined || fresh === undefined || (old.state === fresh.state && old.resting === fresh.resting)) return [];
      const depends = this.dependencies.tasks[index] ?? new Set<Facet>();
      const ids = new Set(reaches.filter(({ facets }) => meets(depends, facets)).map(({ id }) => id));
      return [
        { task: fresh.task, before: old, after: fresh, why: { entries: [...ids], time: moved && (depends.has(NOW) || ids.size === 0) } },
      ];
    });
    return { assessment: look.assessment, changed, again: again.map((index) => this.graph.tasks[index]?.id ?? '') };
  }

  private lookAt(entries: readonly Entry[], now: Moment, before: Look | null): { readonly look: Look; readonly again: readonly number[] } {
    const { graph, options } = this;
    const laid = this.layOut(entries, now, before);
    const { timeline } = laid;
    const touched = before === null ? null : touchedSince(before, timeline, now);
    const world = worldOf(graph, timeline, now, options);
    const isStale = (depends: ReadonlySet<Facet> | undefined): boolean =>
      touched === null || (depends !== undefined && meets(depends, touched));
    const stale = isStale(this.dependencies.stops);
    const stops = stale || before === null ? stopHolds(world) : before.stops;
    const stopRecord = stale || before === null ? world.takeRecord() : before.stopRecord;
    const again: number[] = [];
    const results = graph.tasks.map((task, index): TaskResult => {
      const kept = before?.results[index];
      if (kept !== undefined && !isStale(this.dependencies.tasks[index])) return kept;
      again.push(index);
      return assessTask(world, task);
    });
    const assessment = composeAssessment(world, { stops, stopRecord, results });
    return { look: { now, entries, laid, results, stops, stopRecord, assessment }, again };
  }

  private layOut(entries: readonly Entry[], now: Moment, before: Look | null): LaidOut {
    return (before === null ? null : taken(before, entries, now)) ?? laidOut(everyFact, entries, this.graph, now);
  }
}

/** Begins to watch a machine. */
export function watch(graph: RuleGraph, entries: readonly Entry[], now: Moment, options: AssessOptions = {}): Watch {
  return new Watch(graph, entries, now, options);
}

/** As it was laid out, with what came to it since; `null` where that does not do. */
function taken(before: Look, entries: readonly Entry[], now: Moment): LaidOut | null {
  let laid: LaidOut | null = before.laid;
  if (!isSame(before.now, now)) laid = before.entries.some((entry) => countsOnce(entry, before.now, now)) ? null : passTime(laid, now);
  for (let known = before.entries.length; laid !== null && known < entries.length; known += 1) {
    const entry = entries[known];
    laid = entry === undefined ? null : takeIn(laid, entries.slice(0, known), entry);
  }
  return laid;
}

function touchedSince(before: Look, timeline: Timeline, now: Moment): ReadonlySet<Facet> {
  const found = new Set(differing(before.laid.timeline, timeline));
  if (!isSame(before.now, now)) found.add(NOW);
  return found;
}

/** Whether an entry counts at the one moment and not at the other. */
function countsOnce(entry: Entry, one: Moment, other: Moment): boolean {
  const when = dateEntry(entry)?.when;
  return when !== undefined && countsAt(when, one) !== countsAt(when, other);
}

function meets(a: ReadonlySet<Facet>, b: ReadonlySet<Facet>): boolean {
  for (const each of b) if (a.has(each)) return true;
  return false;
}
