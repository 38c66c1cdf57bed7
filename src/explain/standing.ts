/**
 * Where things stand at the moment of the run, as far as the task's record says: what counterfactual arithmetic starts from.
 */
import type { TaskAssessment } from '../assess/assessment.js';
import type { Entry } from '../history/entry.js';
import { formatDate } from '../values/civil.js';
import { type Moment, parseTime } from '../values/moment.js';
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

/** Gathers the standing from the rules' recorded limits and the day's entries. `tasks`: this task and those that count for it. */
export function standingOf(
  now: Moment,
  task: TaskAssessment,
  rule: RuleFacts | null,
  entries: readonly Entry[],
  tasks: ReadonlySet<string>,
): Standing {
  const byId = new Map(entries.map((entry) => [entry.id, entry]));
  const meters = new Map<string, MeterStanding>();
  if (rule !== null) gatherMeters(rule, byId, meters);
  const today = formatDate(now.day);
  const todays = entries.filter((entry) => touches(entry, today));
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

function touches(entry: Entry, today: string): boolean {
  if (entry.on === today) return true;
  return (
    entry.kind === 'outing' &&
    (entry.untilOn === today || (entry.until === undefined && entry.untilOn === undefined && entry.hours === undefined))
  );
}

function isDoing(entry: Entry, tasks: ReadonlySet<string>): boolean {
  if (entry.kind === 'done') return entry.tasks.some((task) => tasks.has(task));
  return entry.kind === 'stated' && tasks.has(entry.task);
}
