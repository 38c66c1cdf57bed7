/**
 * Where things stand at the moment of the run, as far as the task's record says: what counterfactual arithmetic starts from.
 */
import type { TaskAssessment } from '../assess/assessment.js';
import type { Entry, EntryOf } from '../history/entry.js';
import { dayOf } from '../values/civil.js';
import { type Day, MINUTES_PER_DAY, type Moment, parseTime } from '../values/moment.js';
import type { RuleFacts } from './explanation.js';
import { dialOf } from './dial.js';

export interface Standing {
  readonly now: Moment;
  readonly task: TaskAssessment;
  /** Meter id → life total in ticks now, where the record shows it. */
  readonly meters: ReadonlyMap<string, MeterStanding>;
  /** An outing began or ended on now's day, or is under way: work may count on both sides of a doing. */
  readonly workToday: boolean;
  /** The task, or one that covers it, is recorded as done or stated today. */
  readonly doneToday: boolean;
  /** Gauges and dipsticks that were read today, where it could not be told whether a reading taken now comes later. */
  readonly readToday: ReadonlySet<string>;
}

export interface MeterStanding {
  readonly ticks: number;
  /** Life total less what the dial shows, in ticks; `null` where no entry shows the dial. */
  readonly dialBehind: number | null;
}

/** A history as explanations look into it: gone through once, however many of them are asked for. */
export interface EntriesKnown {
  readonly byId: ReadonlyMap<string, Entry>;
  /** Those that happened on now's day, and outings that were going on then. */
  readonly todays: readonly Entry[];
}

/** Goes through a history once. */
export function entriesKnown(entries: readonly Entry[], now: Moment): EntriesKnown {
  return { byId: new Map(entries.map((entry) => [entry.id, entry])), todays: entries.filter((entry) => touches(entry, now.day)) };
}

/** Gathers the standing from the rules' recorded limits and the day's entries. `tasks`: this task and those that count for it. */
export function standingOf(
  now: Moment,
  task: TaskAssessment,
  rule: RuleFacts | null,
  { byId, todays }: EntriesKnown,
  tasks: ReadonlySet<string>,
): Standing {
  const meters = new Map<string, MeterStanding>();
  if (rule !== null) gatherMeters(rule, byId, meters);
  // A reading of the day on which a meter was replaced may be of the old dial or of the new one.
  for (const entry of todays) if (entry.kind === 'meter-replaced') forgetDial(meters, entry.meter);
  return {
    now,
    task,
    meters,
    workToday: todays.some((entry) => entry.kind === 'outing'),
    readToday: new Set(todays.filter((entry) => !isBefore(entry, now)).flatMap((entry) => Object.keys(entry.readings ?? {}))),
    doneToday: todays.some((entry) => isDoing(entry, tasks)),
  };
}

/** Whether its readings were surely taken before now. */
function isBefore(entry: Entry, now: Moment): boolean {
  const minute = entry.at === undefined ? null : parseTime(entry.at);
  return entry.kind !== 'outing' && now.minute !== null && (minute === null || minute < now.minute);
}

function gatherMeters(rule: RuleFacts, byId: ReadonlyMap<string, Entry>, into: Map<string, MeterStanding>): void {
  const now = rule.limit?.now;
  if (now !== undefined && now !== null && now.point.on === 'meter') {
    const { meter, ticks } = now.point;
    into.set(meter, { ticks, dialBehind: dialOf(meter, ticks, now.entries, byId) });
  }
  for (const part of rule.parts) gatherMeters(part, byId, into);
}

function forgetDial(meters: Map<string, MeterStanding>, meter: string): void {
  const there = meters.get(meter);
  if (there !== undefined) meters.set(meter, { ...there, dialBehind: null });
}

/** Whether it happened on a day, or is an outing that was going on then. */
function touches(entry: Entry, today: Day): boolean {
  const day = dayOf(entry.on);
  if (day === null || day > today) return false;
  return day === today || (entry.kind === 'outing' && lastDay(entry, day) >= today);
}

/** The day on which an outing ended, at the latest; one with no end goes on. */
function lastDay({ at, until, untilOn, hours }: EntryOf<'outing'>, day: Day): number {
  if (untilOn !== undefined) return dayOf(untilOn) ?? day;
  if (until !== undefined) return at !== undefined && until < at ? day + 1 : day;
  if (hours === undefined) return Infinity;
  return at === undefined ? day : day + Math.floor(((parseTime(at) ?? 0) + hours * 60) / MINUTES_PER_DAY);
}

function isDoing(entry: Entry, tasks: ReadonlySet<string>): boolean {
  if (entry.kind === 'done') return entry.tasks.some((task) => tasks.has(task));
  return entry.kind === 'stated' && tasks.has(entry.task);
}
