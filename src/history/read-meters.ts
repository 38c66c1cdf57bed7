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
    const { id } = meter;
    const read: Partial<MetersRead> & MeterTrack =
      facts.outings?.count(meter, layout, attachments) ?? readMeter(id, ticksPerDay(meter), readings.get(id) ?? [], facts);
    tracks.set(id, { points: read.points });
    suspects.push(...(read.suspects ?? []));
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
      if (meter === replaced?.meter || !canBeRead(facts, id, meter, layout)) continue;
      const when = layout.takenAt(dated);
      if (when !== null) addTo(readings, meter, { entry: id, when, shown: ticksOf(value), confirmedBy });
    }
    if (replaced !== null && canBeRead(facts, id, replaced.meter, layout))
      addTo(readings, replaced.meter, { entry: id, confirmedBy, ...replaced.last });
  }
  return readings;
}

function canBeRead(facts: Partial<Facts>, entry: EntryId, meter: string, { names, strays }: Layout): boolean {
  return strays.has(entry, 'meter', meter, names.meters) && (facts.outings?.isRead(names.meters.get(meter), entry, strays) ?? true);
}
