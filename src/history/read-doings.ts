import type { Dated } from './dated-entry.js';
import type { EntryId, EntryOf } from './entry.js';
import { addTo } from '../base/gather.js';
import type { ScheduleNames } from './schedule-names.js';
import type { StraySink } from './stray.js';
import type { Doing, MeterPoint, Timeline } from './timeline.js';

/** Task → its doings as recorded, in order, with the meters that were noted in the same entry and count. */
export function readDoings(
  entries: readonly Dated<EntryOf<'done'>>[],
  names: ScheduleNames,
  metersOf: (entry: EntryId) => ReadonlyMap<string, MeterPoint>,
  strays: StraySink,
): Timeline['doings'] {
  const doings = new Map<string, Doing[]>();
  for (const { entry, when } of entries) {
    for (const supply of Object.keys(entry.used ?? {})) strays.has(entry.id, 'supply', supply, names.supplies);
    const doing = { entry: entry.id, when, meters: metersOf(entry.id) };
    for (const task of new Set(entry.tasks)) {
      if (strays.has(entry.id, 'task', task, names.tasks)) addTo(doings, task, doing);
    }
  }
  return doings;
}
