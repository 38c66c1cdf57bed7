import { compareTexts } from '../base/compare-texts.js';
import { compareMoments } from '../values/moment.js';
import { ticksOf } from '../values/ticks.js';
import type { EntriesInForce } from './entries-in-force.js';
import type { EntryId } from './entry.js';
import type { Reading } from './dial.js';
import type { Facts, Layout } from './facts.js';
import { addTo } from '../base/gather.js';
import { readMeter } from './read-meter.js';
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
  facts: Partial<Facts>,
  inForce: EntriesInForce,
  layout: Layout,
  attachments: Timeline['attachments'],
): MetersRead {
  const readings = readingsOf(facts, inForce, layout);
  const tracks = new Map<string, MeterTrack>();
  const suspects: Suspect[] = [];
  for (const meter of layout.names.meters.values()) {
    if (meter.fromOutings) {
      tracks.set(meter.id, { points: facts.outings?.count(meter, layout, attachments) ?? [] });
      continue;
    }
    const read = readMeter(meter.id, ticksPerDay(meter), readings.get(meter.id) ?? [], facts);
    tracks.set(meter.id, { points: read.points });
    suspects.push(...read.suspects);
  }
  suspects.sort((a, b) => compareMoments(a.when, b.when) || compareTexts(a.entry, b.entry) || compareTexts(a.meter, b.meter));
  return { tracks, suspects };
}

/** What entries say that each meter showed; of a dial that was taken out, what it showed last. */
function readingsOf(facts: Partial<Facts>, { confirmations }: EntriesInForce, layout: Layout): ReadonlyMap<string, readonly Reading[]> {
  const readings = new Map<string, Reading[]>();
  for (const dated of layout.dated) {
    const { id, meters = {} } = dated.entry;
    const confirmedBy = confirmations.get(id) ?? null;
    const replaced = facts.dials?.replacedBy(dated) ?? null;
    for (const [meter, value] of Object.entries(meters)) {
      // A replacement says itself what its dials showed.
      if (meter === replaced?.meter || !canBeRead(id, meter, layout)) continue;
      const when = layout.takenAt(dated);
      if (when !== null) addTo(readings, meter, { entry: id, when, shown: ticksOf(value), confirmedBy });
    }
    if (replaced === null || !canBeRead(id, replaced.meter, layout)) continue;
    const { meter, final, initial } = replaced;
    addTo(readings, meter, { entry: id, when: dated.when, shown: ticksOf(final), initial: ticksOf(initial), confirmedBy });
  }
  return readings;
}

function canBeRead(entry: EntryId, meter: string, { names, strays }: Layout): boolean {
  if (!strays.has(entry, 'meter', meter, names.meters)) return false;
  if (names.meters.get(meter)?.fromOutings !== true) return true;
  strays.report(entry, `\`${meter}\` counts from outings; a reading of it is not used`);
  return false;
}
