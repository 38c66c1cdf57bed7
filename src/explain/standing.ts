/**
 * Where things stand at the moment of the run, as far as the task's record says: what counterfactual arithmetic starts from.
 */
import type { TaskAssessment } from '../assess/assessment.js';
import type { Entry } from '../history/entry.js';
import type { Moment } from '../values/moment.js';
import { dialOf } from './dial.js';
import type { RuleFacts } from './explanation.js';
import type { Run } from './run.js';

export interface Standing {
  readonly now: Moment;
  readonly task: TaskAssessment;
  /** Meter id → life total in ticks now, where the record shows it. */
  readonly meters: ReadonlyMap<string, MeterStanding>;
  /** An outing began or ended on now's day, or is under way: work may count on both sides of a doing. */
  readonly workToday: boolean;
  /** Meters that count from outings, or run only with an attachment. */
  readonly withOutings: ReadonlySet<string>;
  /** What was read on an outing of today will have been read on a later day. */
  readonly workEndsLater: boolean;
  /** The task, or one that covers it, is recorded as done or stated today. */
  readonly doneToday: boolean;
  /** It was done today at a minute, and now has none: a doing of now would stand before that one. */
  readonly doneAtMinute: boolean;
  /** Whether the task is stated to have been done, without a day; the history is gone through only where somebody asks. */
  readonly isStatedUndated: () => boolean;
  /** Gauges and dipsticks that were read today, where it could not be told whether a reading taken now comes later. */
  readonly readToday: ReadonlySet<string>;
  /** Those read today for which a reading of a meter taken now would be one that is not later. */
  readonly readByNow: ReadonlySet<string>;
}

export interface MeterStanding {
  readonly ticks: number;
  /** Life total less what the dial shows, in ticks; `null` where no entry shows the dial. */
  readonly dialBehind: number | null;
}

/** Gathers the standing from the rules' recorded limits and the day's entries. */
export function standingOf({ schedule, assessment, assessed: task, history, outline, unsureDials }: Run, rule: RuleFacts): Standing {
  const { now } = assessment;
  const { today } = history;
  const meters = new Map<string, MeterStanding>();
  gatherMeters(rule, { history, unsureDials }, meters);
  for (const meter of today.confirmed) forgetDial(meters, meter);
  let [doneToday, doneAtMinute] = [false, false];
  for (const entry of today.entries) {
    // A reading of the day on which a meter was replaced may be of the old dial or of the new one.
    if (entry.kind === 'meter-replaced') forgetDial(meters, entry.meter);
    if (!isDoing(entry, outline.counting)) continue;
    doneToday = true;
    doneAtMinute ||= now.minute === null && entry.at !== undefined;
  }
  return {
    now,
    task,
    meters,
    isStatedUndated: () => history.undated.has(task.task),
    workToday: today.work,
    withOutings: schedule.withOutings,
    workEndsLater: today.endsLater,
    readToday: today.read,
    readByNow: today.readByNow,
    doneToday,
    doneAtMinute,
  };
}

function gatherMeters(rule: RuleFacts, run: Pick<Run, 'history' | 'unsureDials'>, into: Map<string, MeterStanding>): void {
  const now = rule.limit?.now;
  const shown = now?.read ?? now?.point;
  if (now !== undefined && now !== null && shown?.on === 'meter') {
    const { meter, ticks } = shown;
    const unsure = run.unsureDials.get(meter);
    const isUnsure = unsure !== undefined && unsure >= (rule.readWhen?.day ?? unsure);
    into.set(meter, { ticks, dialBehind: isUnsure ? null : dialOf(meter, ticks, now.entries, run.history.byId) });
  }
  for (const part of rule.parts) gatherMeters(part, run, into);
}

function forgetDial(meters: Map<string, MeterStanding>, meter: string): void {
  const there = meters.get(meter);
  if (there !== undefined) meters.set(meter, { ...there, dialBehind: null });
}

function isDoing(entry: Entry, tasks: ReadonlySet<string>): boolean {
  if (entry.kind === 'done') return entry.tasks.some((task) => tasks.has(task));
  return entry.kind === 'stated' && tasks.has(entry.task);
}
