import { dayOf } from '../values/civil.js';
import { onDay } from '../values/moment.js';
import type { Moment } from '../values/moment.js';
import { ticksOf } from '../values/ticks.js';
import type { Dated } from './dated-entry.js';
import type { EntryOf } from './entry.js';
import { meterAt } from './meter-at.js';
import type { ScheduleNames } from './schedule-names.js';
import type { StraySink } from './stray.js';
import type { MeterTrack, Statement, Timeline } from './timeline.js';

/** Task → what the owner states about it without a record, in the order in which it was stated. */
export function readStatements(
  entries: readonly Dated<EntryOf<'stated'>>[],
  names: ScheduleNames,
  tracks: ReadonlyMap<string, MeterTrack>,
  strays: StraySink,
): Timeline['statements'] {
  const statements = new Map<string, Statement[]>();
  for (const { entry, when } of entries) {
    if (!strays.has(entry.id, 'task', entry.task, names.tasks)) continue;
    const doneBy = entry.doneBy === undefined ? null : dayOf(entry.doneBy);
    const doneAt = new Map<string, number>();
    for (const [meter, shown] of Object.entries(entry.doneAt ?? {})) {
      if (!strays.has(entry.id, 'meter', meter, names.meters)) continue;
      doneAt.set(meter, ticksOf(shown) + offsetAt(tracks.get(meter), doneBy === null ? when : onDay(doneBy)));
    }
    const statement = { entry: entry.id, when, doneBy, doneAt, words: entry.words ?? null };
    const there = statements.get(entry.task);
    if (there === undefined) statements.set(entry.task, [statement]);
    else there.push(statement);
  }
  return statements;
}

/** Life total − ticks shown, on the dial that was in place at a moment. */
function offsetAt(track: MeterTrack | undefined, when: Moment): number {
  const point = track === undefined ? null : meterAt(track, when);
  return point === null ? 0 : point.total - ticksOf(point.shown);
}
