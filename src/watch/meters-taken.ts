/**
 * The meters of a machine with the readings of one more entry.
 */
import { compareTexts } from '../base/compare-texts.js';
import type { Dated } from '../history/dated-entry.js';
import type { EntriesInForce } from '../history/entries-in-force.js';
import { everyFact } from '../history/every-fact.js';
import type { Layout } from '../history/facts.js';
import type { LaidOut } from '../history/lay-out.js';
import { readMeters } from '../history/read-meters.js';
import { strayInto } from '../history/stray.js';
import type { MeterPoint, MeterTrack, Suspect, Timeline } from '../history/timeline.js';
import { compareMoments } from '../values/moment.js';
import { isSame } from './is-same.js';

/** Meters after an entry was taken in. */
export interface MetersTaken {
  readonly tracks: Timeline['meters'];
  readonly suspects: readonly Suspect[];
  /** The points that the entry itself carries. */
  readonly noted: ReadonlyMap<string, MeterPoint>;
}

/** The meters that the entry notes, read again; `null` if one of them is not there or if what else was read of it comes out otherwise now. */
export function meterTaken({ timeline }: LaidOut, inForce: EntriesInForce, whole: Layout, added: Dated): MetersTaken | null {
  const noted = new Map<string, MeterPoint>();
  const tracks = new Map(timeline.meters);
  let { suspects } = timeline;
  for (const id of Object.keys(added.entry.meters ?? {})) {
    const meter = whole.names.meters.get(id);
    if (meter === undefined || meter.fromOutings) return null;
    const entries = inForce.entries.filter(
      ({ entry }) => entry.meters?.[id] !== undefined || (entry.kind === 'meter-replaced' && entry.meter === id),
    );
    const alone: Layout = { ...whole, names: { ...whole.names, meters: new Map([[id, meter]]) }, strays: strayInto([]) };
    const read = readMeters(everyFact, { ...inForce, entries }, alone, timeline.attachments);
    const others = suspects.filter((suspect) => suspect.meter !== id);
    const was: MeterRead = { points: timeline.meters.get(id)?.points ?? [], suspects: suspects.filter((suspect) => suspect.meter === id) };
    const is: MeterRead = { points: read.tracks.get(id)?.points ?? [], suspects: read.suspects };
    if (!isSame(was, without(is, added.entry.id))) return null;
    tracks.set(id, { points: is.points });
    if (is.suspects.length > 0) suspects = [...others, ...is.suspects].sort(inOrder);
    const own = is.points.find(({ entry }) => entry === added.entry.id);
    if (own !== undefined) noted.set(id, own);
  }
  return { tracks, suspects, noted };
}

type MeterRead = MeterTrack & { readonly suspects: readonly Suspect[] };

function without({ points, suspects }: MeterRead, id: string): MeterRead {
  return { points: points.filter(({ entry }) => entry !== id), suspects: suspects.filter(({ entry }) => entry !== id) };
}

function inOrder(a: Suspect, b: Suspect): number {
  return compareMoments(a.when, b.when) || compareTexts(a.entry, b.entry) || compareTexts(a.meter, b.meter);
}
