/**
 * An intended outing, from end to end: what must be done before it, what falls due during it and when by the clock, and what to do
 * after it.
 *
 * Law: nothing here decides what is due. The outing is played through as if it were under way (hour meters running with the
 * clock, tasks that are due taken as done when they fall due) and the assessor is asked at each moment; moments are found by
 * halving, to the minute.
 */
import { assessTimeline } from '../assess/assess.js';
import type { Assessment, AssessOptions, DuePoint, Intent, TaskAssessment, Verdict } from '../assess/assessment.js';
import type { NodeId, RuleGraph } from '../graph/rule-graph.js';
import type { Entry, EntryOf } from '../history/entry.js';
import { readTimeline } from '../history/read-timeline.js';
import { formatDate } from '../values/civil.js';
import { addMinutes, formatTime, isAfter, type Moment } from '../values/moment.js';

/** An outing that is intended. */
export interface IntendedOuting extends NonNullable<Intent['outing']> {
  readonly hours: number;
}

/** One thing that falls due while working. */
export interface DuringLine {
  readonly task: string;
  /** Minutes from the start of the outing. */
  readonly afterMinutes: number;
  /** By the clock; `null` when the start is not known. */
  readonly at: Moment | null;
  readonly governing: NodeId | null;
  readonly due: DuePoint | null;
}

/** The answer of `duringOuting`. */
export interface OutingOutlook {
  readonly format: 'duewright-outing';
  readonly version: 1;
  readonly schedule: { readonly name: string; readonly fingerprint: string };
  readonly now: Moment;
  readonly outing: IntendedOuting;
  readonly verdict: Verdict;
  readonly before: readonly TaskAssessment[];
  readonly during: readonly DuringLine[];
  readonly after: readonly TaskAssessment[];
  /** Said plainly: what was taken for granted. */
  readonly assumed: readonly ('meters-run-with-the-clock' | 'done-when-due')[];
  /** True if the list was cut at `most` lines. */
  readonly cut: boolean;
}

/** What `duringOuting` may be given besides the outing. */
export interface DuringOptions {
  readonly assess?: AssessOptions;
  /** Most lines for what falls due during work. Default 100. */
  readonly most?: number;
}

/** A start that is not known is played from eight in the morning; no clock time is then reported. */
const assumedStart = 8 * 60;
const dueStates: readonly string[] = ['due', 'overdue'];

/**
 * Plays an intended outing through.
 *
 * @example duringOuting(graph, entries, now, { start: 600, hours: 3, duties: ['tall-growth'] }).during
 */
export function duringOuting(
  graph: RuleGraph,
  entries: readonly Entry[],
  now: Moment,
  outing: IntendedOuting,
  options: DuringOptions = {},
): OutingOutlook {
  const play = new Play(graph, entries, now, outing, options.assess ?? {});
  const intended = play.intended();
  const before = play.dueByStart(intended.tasks);
  const started = before.map((task) => task.task);
  play.takeAsDone(started, 0);
  const { during, cut } = playThrough(play, options.most ?? 100);
  return {
    format: 'duewright-outing',
    version: 1,
    schedule: { name: graph.schedule.name, fingerprint: graph.fingerprint },
    now,
    outing,
    verdict: intended.verdict,
    before,
    during,
    after: play.over().filter(isDue),
    assumed: ['meters-run-with-the-clock', 'done-when-due'],
    cut,
  };
}

function isDue(task: TaskAssessment): boolean {
  return dueStates.includes(task.state);
}

function playThrough(play: Play, most: number): { readonly during: readonly DuringLine[]; readonly cut: boolean } {
  const during: DuringLine[] = [];
  const settled = new Set(play.dueAt(0).map((task) => task.task));
  let from = 0;
  while (during.length < most) {
    const minute = firstChange(play, settled, from);
    if (minute === null) return { during, cut: false };
    const fresh = play.dueAt(minute).filter((task) => !settled.has(task.task));
    for (const task of fresh)
      during.push({ task: task.task, afterMinutes: minute, at: play.clock(minute), governing: task.governing, due: task.due });
    play.takeAsDone(
      fresh.map((task) => task.task),
      minute,
    );
    for (const task of play.dueAt(minute)) settled.add(task.task);
    from = minute;
  }
  return { during, cut: true };
}

/** The first minute after `from` at which something falls due that is not settled; `null` if nothing does before the end. */
function firstChange(play: Play, settled: ReadonlySet<string>, from: number): number | null {
  const changed = (minute: number): boolean => play.dueAt(minute).some((task) => !settled.has(task.task));
  let low = from;
  let high = play.minutes;
  if (high <= low || !changed(high)) return null;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (changed(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** The outing as played: the entries it adds, and the assessor's answer at each minute. */
class Play {
  readonly minutes: number;
  private readonly start: Moment;
  private readonly done: Entry[] = [];
  private readonly dials: ReadonlyMap<string, number>;

  constructor(
    private readonly graph: RuleGraph,
    private readonly entries: readonly Entry[],
    private readonly now: Moment,
    private readonly outing: IntendedOuting,
    private readonly options: AssessOptions,
  ) {
    this.minutes = Math.round(outing.hours * 60);
    this.start = { day: now.day, minute: outing.start ?? now.minute ?? assumedStart };
    this.dials = this.runningDials();
  }

  clock(minute: number): Moment | null {
    return this.outing.start === undefined && this.now.minute === null ? null : addMinutes(this.start, minute);
  }

  /** Before it: the outing as an intention. */
  intended(): Assessment {
    return this.ask(this.entries, this.now, { outing: this.outing });
  }

  /** What is due now, and what will have come due by the time at which the outing begins. */
  dueByStart(now: readonly TaskAssessment[]): readonly TaskAssessment[] {
    const byStart = isAfter(this.start, this.now) ? this.ask(this.entries, this.start, { outing: this.outing }).tasks : [];
    return now.flatMap((task, index) => [task, byStart[index]].find((each) => each !== undefined && isDue(each)) ?? []);
  }

  /** `minute` minutes into it. */
  dueAt(minute: number): readonly TaskAssessment[] {
    return this.ask([...this.entries, ...this.done, ...this.played(minute, false)], addMinutes(this.start, minute), {}).tasks.filter(isDue);
  }

  /** When it has just ended. */
  over(): readonly TaskAssessment[] {
    return this.ask([...this.entries, ...this.done, ...this.played(this.minutes, true)], addMinutes(this.start, this.minutes), {}).tasks;
  }

  takeAsDone(tasks: readonly string[], minute: number): void {
    if (tasks.length === 0) return;
    const when = addMinutes(this.start, minute);
    const meters = this.metersAt(minute);
    this.done.push({
      kind: 'done',
      id: `\u{10ffff}done-${this.done.length}`,
      on: formatDate(when.day),
      at: formatTime(when.minute ?? 0),
      tasks: [...tasks],
      meters,
    });
  }

  private ask(entries: readonly Entry[], now: Moment, intent: Intent): Assessment {
    return assessTimeline(this.graph, readTimeline(entries, this.graph, now), now, { ...this.options, intent, withoutRecord: true });
  }

  /** The outing so far, or over, with what the dials then show. */
  private played(minute: number, ended: boolean): readonly Entry[] {
    const end = addMinutes(this.start, minute);
    const outing: EntryOf<'outing'> = {
      kind: 'outing',
      id: '\u{10ffff}outing',
      on: formatDate(this.start.day),
      at: formatTime(this.start.minute ?? 0),
      ...(ended ? { until: formatTime(end.minute ?? 0), untilOn: formatDate(end.day) } : {}),
      duties: (this.outing.duties ?? []).map((duty) => ({ duty })),
      attachments: [...(this.outing.attachments ?? [])],
      ...(this.outing.shift === undefined ? {} : { shift: this.outing.shift }),
    };
    const dials: Entry = {
      kind: 'reading',
      id: '\u{10ffff}reading',
      on: formatDate(end.day),
      at: formatTime(end.minute ?? 0),
      meters: this.metersAt(minute),
    };
    return [outing, dials];
  }

  private metersAt(minute: number): Record<string, number> {
    return Object.fromEntries([...this.dials].map(([meter, shown]) => [meter, shown + minute / 60]));
  }

  /** Hour meters that will run: the machine's own, and those of the attachments that go along. */
  private runningDials(): ReadonlyMap<string, number> {
    const timeline = readTimeline(this.entries, this.graph, this.now);
    const running = this.graph.meters.filter(
      (meter) =>
        meter.unit === 'h' &&
        !meter.fromOutings &&
        (meter.attachment === undefined || this.outing.attachments?.includes(meter.attachment) === true),
    );
    return new Map(
      running.flatMap((meter): [string, number][] => {
        const last = timeline.meters.get(meter.id)?.points.at(-1);
        return last === undefined ? [] : [[meter.id, last.shown]];
      }),
    );
  }
}
