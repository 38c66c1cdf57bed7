import { dayOf } from '../values/civil.js';
import { onDay } from '../values/moment.js';
import type { Moment } from '../values/moment.js';
import { ticksOf } from '../values/ticks.js';
import { ofKind } from './dated-entry.js';
import type { EntryId } from './entry.js';
import type { Layout } from './facts.js';
import { addTo } from '../base/gather.js';
import { meterAt } from './meter-at.js';
import type { MeterTrack, Statement, Timeline } from './timeline.js';

/** Task → what the owner states about it without a record, in the order in which it was stated. */
export function readStatements({ dated, names, strays }: Layout, tracks: ReadonlyMap<string, MeterTrack>): Timeline['statements'] {
  const statements = new Map<string, Statement[]>();
  const known = new Map<MeterTrack, ReadonlySet<EntryId>>();
  for (const { entry, when } of ofKind(dated, 'stated')) {
    if (!strays.has(entry.id, 'task', entry.task, names.tasks)) continue;
    const doneBy = entry.doneBy === undefined ? null : dayOf(entry.doneBy);
    const doneAt = new Map<string, number>();
    const dials = new Map<string, readonly EntryId[]>();
    for (const [meter, shown] of Object.entries(entry.doneAt ?? {})) {
      if (!strays.has(entry.id, 'meter', meter, names.meters)) continue;
      const { offset, entries: because } = dialAt(tracks.get(meter), doneBy === null ? when : onDay(doneBy), known);
      doneAt.set(meter, ticksOf(shown) + offset);
      if (offset !== 0) dials.set(meter, because);
    }
    const statement = { entry: entry.id, when, doneBy, doneAt, dials, words: entry.words ?? null };
    addTo(statements, entry.task, statement);
  }
  return statements;
}

/** Life total − ticks shown, on the dial that was in place at a moment, and the entries that put it there. */
function dialAt(
  track: MeterTrack | undefined,
  when: Moment,
  known: Map<MeterTrack, ReadonlySet<EntryId>>,
): { readonly offset: number; readonly entries: readonly EntryId[] } {
  const point = track === undefined ? null : meterAt(track, when);
  if (track === undefined || point === null) return { offset: 0, entries: [] };
  const shown = known.get(track) ?? new Set(track.points.map(({ entry }) => entry));
  known.set(track, shown);
  // A replacement whose final value is not believed is no reading itself: it takes the next one to show the new dial.
  const setBy = point.alongside.at(-1);
  const isShown = setBy !== undefined && shown.has(setBy);
  return { offset: point.total - ticksOf(point.shown), entries: isShown ? point.alongside : [point.entry, ...point.alongside] };
}
