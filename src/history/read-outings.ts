import type { Meter } from '../graph/rule-graph.js';
import { dayOf } from '../values/civil.js';
import type { Moment } from '../values/moment.js';
import { addMinutes, countsAt, isAfter, minutesBetween, onDay, parseTime } from '../values/moment.js';
import { TICKS_PER_MINUTE, ticksOf } from '../values/ticks.js';
import { ofKind } from './dated-entry.js';
import type { EntryId, EntryOf } from './entry.js';
import type { Layout, OutingFacts } from './facts.js';
import { countOutings, cutOuting, minuteReached } from './count-outings.js';
import type { ScheduleNames } from './schedule-names.js';
import type { StraySink } from './stray.js';
import type { DutyHours, MeterTrack, Outing } from './timeline.js';

/** An outing before the meters that were noted with it are known. */
export type BareOuting = Omit<Outing, 'meters'>;

/** How outings are read. */
export const outingFacts: OutingFacts = { read, takenAt, count, isRead, cut: cutOuting, cameTo: minuteReached };

/**
 * The outings of a history, in order.
 *
 * One that ends after `now` is still under way: its end has not happened yet.
 */
function read({ dated, names, now, strays }: Pick<Layout, 'dated' | 'names' | 'now' | 'strays'>): readonly BareOuting[] {
  return ofKind(dated, 'outing').flatMap(({ entry, when }) => {
    const end = endOf(entry, when, now);
    if (end !== null && isAfter(when, end)) {
      strays.report(entry.id, 'This outing ends before it begins');
      return [];
    }
    const ticks = end === null ? timeSoFar(when, now) : timeAtWork(entry, when, end);
    const attachments = (entry.attachments ?? []).filter((name) => strays.has(entry.id, 'attachment', name, names.attachments));
    const duties = readDuties(entry, ticks, names, strays);
    return [{ entry: entry.id, when, end, ticks, duties, attachments: [...new Set(attachments)], shift: entry.shift ?? null }];
  });
}

/** With an outing at its end, or at its start while it is under way; not yet (`null`) while an end that is noted is still to come. */
function takenAt(outings: readonly BareOuting[]): Layout['takenAt'] {
  const byEntry = new Map(outings.map((outing) => [outing.entry, outing]));
  return ({ entry, when }) => {
    const outing = byEntry.get(entry.id);
    if (outing === undefined || entry.kind !== 'outing') return when;
    const endIsNoted = entry.until !== undefined || entry.untilOn !== undefined;
    return outing.end === null && endIsNoted ? null : (outing.end ?? outing.when);
  };
}

function count(...[meter, layout, attachments]: Parameters<OutingFacts['count']>): MeterTrack | undefined {
  return meter.fromOutings ? { points: countOutings(meter, layout, attachments) } : undefined;
}

function isRead(meter: Meter | undefined, entry: EntryId, strays: StraySink): boolean {
  if (meter?.fromOutings !== true) return true;
  strays.report(entry, `\`${meter.id}\` counts from outings; a reading of it is not used`);
  return false;
}

function endOf(entry: EntryOf<'outing'>, start: Moment, now: Moment): Moment | null {
  const noted = notedEnd(entry, start);
  if (noted !== null) return countsAt(noted, now) ? noted : null;
  if (entry.hours === undefined) return null;
  const reckoned = addMinutes(start, Math.round(entry.hours * 60));
  // Whoever notes the hours notes them afterwards, so the outing is over, whatever rounding makes of its end.
  return countsAt(reckoned, now) ? reckoned : now;
}

function notedEnd(entry: EntryOf<'outing'>, start: Moment): Moment | null {
  const day = entry.untilOn === undefined ? start.day : dayOf(entry.untilOn);
  if (day === null) return null;
  if (entry.until === undefined) return entry.untilOn === undefined ? null : onDay(day);
  const end = { day, minute: parseTime(entry.until) };
  const overMidnight = entry.untilOn === undefined && isAfter(start, end);
  return overMidnight ? addMinutes(end, 24 * 60) : end;
}

/** Ticks of an hour: as noted, which leaves out the breaks; else by the clock where both ends were noted. */
function timeAtWork(entry: EntryOf<'outing'>, start: Moment, end: Moment): number {
  if (entry.hours !== undefined) return ticksOf(entry.hours);
  return (minutesBetween(start, end) ?? 0) * TICKS_PER_MINUTE;
}

/** An outing under way has taken the time since its start, where both minutes are known. */
function timeSoFar(start: Moment, now: Moment): number {
  return Math.max(0, minutesBetween(start, now) ?? 0) * TICKS_PER_MINUTE;
}

/** A duty without hours took the whole outing; one that is named twice adds up. */
function readDuties(entry: EntryOf<'outing'>, whole: number, names: ScheduleNames, strays: StraySink): readonly DutyHours[] {
  const duties = new Map<string, number>();
  for (const { duty, hours } of entry.duties ?? []) {
    if (!strays.has(entry.id, 'duty', duty, names.duties)) continue;
    duties.set(duty, (duties.get(duty) ?? 0) + (hours === undefined ? whole : ticksOf(hours)));
  }
  return [...duties].map(([duty, ticks]) => ({ duty, ticks }));
}
