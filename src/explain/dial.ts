/**
 * The difference between a meter's life total and what its dial shows, which a replaced meter leaves behind.
 */
import type { Entry, EntryId } from '../history/entry.js';
import { ticksOf } from '../values/ticks.js';

/** Life total less dial, in ticks, by the first of the entries that shows the dial; `null` if none does. */
export function dialOf(meter: string, total: number, entries: readonly EntryId[], byId: ReadonlyMap<EntryId, Entry>): number | null {
  for (const id of entries) {
    const entry = byId.get(id);
    const shown = entry === undefined ? undefined : shownBy(entry, meter);
    if (shown !== undefined) return total - ticksOf(shown);
  }
  return null;
}

function shownBy(entry: Entry, meter: string): number | undefined {
  // What stands beside a replacement is the old dial; from then on the new one counts.
  return entry.kind === 'meter-replaced' && entry.meter === meter ? entry.initial : entry.meters?.[meter];
}
