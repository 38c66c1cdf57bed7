/**
 * Work that is under way: an outing that has begun and is written down when it ends. It outlives a page that is closed meanwhile.
 *
 * What falls due, and when, is asked of the engine: the outing so far stands in the history, hour meters run with the clock.
 */
import type { DuringLine, Entry, EntryOf, Moment, RuleGraph } from '../../../engine.js';
import { assess, duringOuting } from '../../../engine.js';
import { dayOf, formatDate } from '../../../values/civil.js';
import { formatTime, minutesBetween, parseTime } from '../../../values/moment.js';

export interface RunningWork {
  readonly on: string;
  readonly at: string;
  readonly hours: number;
  readonly duties: readonly string[];
  readonly attachments: readonly string[];
  /** What the hour meters that run showed at the start, as far as is known. */
  readonly dials: Readonly<Record<string, number>>;
  /** Tasks that were due when it began. As the engine does when it plays an outing through, they are taken as done then: what is told here is
   *  what falls due while working; what was left undone before is told beside it. */
  readonly dueBefore: readonly string[];
}

/** What was kept; `null` where there is none. */
export function readRunning(text: string | null): RunningWork | null {
  if (text === null) return null;
  try {
    const kept = JSON.parse(text) as RunningWork;
    return dayOf(kept.on) !== null && parseTime(kept.at) !== null && kept.hours > 0 ? kept : null;
  } catch {
    return null;
  }
}

/** Minutes since it began. */
export function minutesIn(running: RunningWork, now: Moment): number {
  const day = dayOf(running.on) ?? now.day;
  return Math.max(0, minutesBetween({ day, minute: parseTime(running.at) }, now) ?? 0);
}

/** Tasks that fell due since it began and are not done, as of now. */
export function dueSince(running: RunningWork, graph: RuleGraph, entries: readonly Entry[], now: Moment): readonly string[] {
  const played = [...entries, ...takenAsDone(running), outingOf(running), dialsAt(running, now)];
  const { tasks } = assess(graph, played, now, { withoutRecord: true });
  return tasks.filter(({ state }) => state === 'due' || state === 'overdue').map(({ task }) => task);
}

/** The next few things that fall due, if what is due is done now. */
export function dueNext(running: RunningWork, graph: RuleGraph, entries: readonly Entry[], now: Moment, most = 4): readonly DuringLine[] {
  const left = running.hours - minutesIn(running, now) / 60;
  if (left <= 0) return [];
  const soFar = { ...outingOf(running), until: formatTime(now.minute ?? 0), untilOn: formatDate(now.day) };
  const outing = { start: now.minute ?? 0, hours: left, duties: running.duties, attachments: running.attachments };
  return duringOuting(graph, [...entries, ...takenAsDone(running), soFar, dialsAt(running, now)], now, outing, { most }).during;
}

/** The outing as an entry without an end: under way. */
export function outingOf({ on, at, duties, attachments }: RunningWork): EntryOf<'outing'> {
  return { kind: 'outing', id: 'under-way', on, at, duties: duties.map((duty) => ({ duty })), attachments: [...attachments] };
}

function takenAsDone({ on, at, dials, dueBefore }: RunningWork): readonly EntryOf<'done'>[] {
  return dueBefore.length === 0 ? [] : [{ kind: 'done', id: 'under-way-before', on, at, tasks: [...dueBefore], meters: { ...dials } }];
}

function dialsAt(running: RunningWork, now: Moment): EntryOf<'reading'> {
  const hours = minutesIn(running, now) / 60;
  const meters = Object.fromEntries(Object.entries(running.dials).map(([meter, shown]) => [meter, shown + hours]));
  return { kind: 'reading', id: 'under-way-dials', on: formatDate(now.day), at: formatTime(now.minute ?? 0), meters };
}
