import { compareTexts } from '../base/compare-texts.js';
import { compareMoments } from '../values/moment.js';
import { ticksOf } from '../values/ticks.js';
import type { EntriesInForce } from './entries-in-force.js';
import type { EntryId } from './entry.js';
import type { Reading } from './dial.js';
import type { Facts, Layout, Replacement } from './facts.js';
import { readMeter } from './read-meter.js';
import type { MeterRecord } from './read-meter.js';
import { ticksPerDay } from './ticks-per-day.js';
import type { MeterTrack, Suspect, Timeline } from './timeline.js';

/** All meters of a machine, read. */
export interface MetersRead {
  readonly tracks: ReadonlyMap<string, MeterTrack>;
  /** In order of moment, entry and meter. */
  readonly suspects: readonly Suspect[];
}

/** Reads every meter that the schedule has; one that was never read has an empty track. */
export function readMeters(
  facts: Pick<Partial<Facts>, 'dials' | 'outings'>,
  inForce: EntriesInForce,
  layout: Layout,
  attachments: Timeline['attachments'],
): MetersRead {
  const records = recordsOf(inForce, layout);
  const tracks = new Map<string, MeterTrack>();
  const suspects: Suspect[] = [];
  for (const meter of layout.names.meters.values()) {
    if (meter.fromOutings) {
      tracks.set(meter.id, { points: facts.outings?.count(meter, layout.outings, attachments) ?? [] });
      continue;
    }
    const read = readMeter(meter.id, ticksPerDay(meter), records.get(meter.id) ?? { readings: [], replacements: [] }, facts.dials);
    tracks.set(meter.id, { points: read.points });
    suspects.push(...read.suspects);
  }
  suspects.sort((a, b) => compareMoments(a.when, b.when) || compareTexts(a.entry, b.entry) || compareTexts(a.meter, b.meter));
  return { tracks, suspects };
}

function recordsOf(inForce: EntriesInForce, layout: Layout): ReadonlyMap<string, MeterRecord> {
  const records = new Map<string, { readonly readings: Reading[]; readonly replacements: Replacement[] }>();
  for (const meter of layout.names.meters.keys()) records.set(meter, { readings: [], replacements: [] });
  for (const dated of inForce.entries) {
    const { entry } = dated;
    const confirmedBy = inForce.confirmations.get(entry.id) ?? null;
    const replaced = entry.kind === 'meter-replaced' ? entry.meter : null;
    for (const [meter, value] of Object.entries(entry.meters ?? {})) {
      // A replacement says itself what its dials showed.
      if (meter === replaced || !canBeRead(entry.id, meter, layout)) continue;
      const when = layout.takenAt(dated);
      if (when !== null) records.get(meter)?.readings.push({ entry: entry.id, when, shown: ticksOf(value), confirmedBy });
    }
    if (entry.kind !== 'meter-replaced' || !canBeRead(entry.id, entry.meter, layout)) continue;
    const [shown, initial] = [ticksOf(entry.final), ticksOf(entry.initial)];
    records.get(entry.meter)?.replacements.push({ entry: entry.id, when: dated.when, shown, initial, confirmedBy });
  }
  return records;
}

function canBeRead(entry: EntryId, meter: string, { names, strays }: Layout): boolean {
  if (!strays.has(entry, 'meter', meter, names.meters)) return false;
  if (names.meters.get(meter)?.fromOutings !== true) return true;
  strays.report(entry, `\`${meter}\` counts from outings; a reading of it is not used`);
  return false;
}
