import { compareTexts } from '../base/compare-texts.js';
import type { Meter } from '../graph/rule-graph.js';
import { compareMoments } from '../values/moment.js';
import type { Moment } from '../values/moment.js';
import { TICKS_PER_UNIT, ticksOf, unitsOf } from '../values/ticks.js';
import { convert, findUnit } from '../values/units.js';
import type { Dated } from './dated-entry.js';
import type { EntriesInForce } from './entries-in-force.js';
import type { EntryId } from './entry.js';
import { readMeter } from './read-meter.js';
import type { MeterRecord, Replacement } from './read-meter.js';
import type { Reading } from './dial.js';
import { inOrderOfEnd } from './read-outings.js';
import type { BareOuting } from './read-outings.js';
import type { ScheduleNames } from './schedule-names.js';
import type { StraySink } from './stray.js';
import type { MeterPoint, MeterTrack, Spell, Suspect } from './timeline.js';

/** All meters of a machine, read. */
export interface MetersRead {
  readonly tracks: ReadonlyMap<string, MeterTrack>;
  /** In order of moment, entry and meter. */
  readonly suspects: readonly Suspect[];
}

/** What reading the meters needs to know besides the entries. */
export interface MeterSurroundings {
  readonly names: ScheduleNames;
  readonly outings: readonly BareOuting[];
  readonly attachments: ReadonlyMap<string, readonly Spell[]>;
  /** When the readings of an entry were taken; `null` if that is still to come. */
  readonly takenAt: (dated: Dated) => Moment | null;
  readonly strays: StraySink;
}

/** Reads every meter that the schedule has; one that was never read has an empty track. */
export function readMeters(inForce: EntriesInForce, around: MeterSurroundings): MetersRead {
  const records = recordsOf(inForce, around);
  const tracks = new Map<string, MeterTrack>();
  const suspects: Suspect[] = [];
  for (const meter of around.names.meters.values()) {
    if (meter.fromOutings) {
      tracks.set(meter.id, { points: countOutings(meter, around) });
      continue;
    }
    const read = readMeter(meter.id, ticksPerDay(meter), records.get(meter.id) ?? { readings: [], replacements: [] });
    tracks.set(meter.id, { points: read.points });
    suspects.push(...read.suspects);
  }
  suspects.sort((a, b) => compareMoments(a.when, b.when) || compareTexts(a.entry, b.entry) || compareTexts(a.meter, b.meter));
  return { tracks, suspects };
}

function recordsOf(inForce: EntriesInForce, around: MeterSurroundings): ReadonlyMap<string, MeterRecord> {
  const records = new Map<string, { readonly readings: Reading[]; readonly replacements: Replacement[] }>();
  for (const meter of around.names.meters.keys()) records.set(meter, { readings: [], replacements: [] });
  for (const dated of inForce.entries) {
    const { entry } = dated;
    const confirmedBy = inForce.confirmations.get(entry.id) ?? null;
    const replaced = entry.kind === 'meter-replaced' ? entry.meter : null;
    for (const [meter, value] of Object.entries(entry.meters ?? {})) {
      // A replacement says itself what its dials showed.
      if (meter === replaced || !canBeRead(entry.id, meter, around)) continue;
      const when = around.takenAt(dated);
      if (when !== null) records.get(meter)?.readings.push({ entry: entry.id, when, shown: ticksOf(value), confirmedBy });
    }
    if (entry.kind !== 'meter-replaced' || !canBeRead(entry.id, entry.meter, around)) continue;
    const [shown, initial] = [ticksOf(entry.final), ticksOf(entry.initial)];
    records.get(entry.meter)?.replacements.push({ entry: entry.id, when: dated.when, shown, initial, confirmedBy });
  }
  return records;
}

function canBeRead(entry: EntryId, meter: string, { names, strays }: MeterSurroundings): boolean {
  if (!strays.has(entry, 'meter', meter, names.meters)) return false;
  if (names.meters.get(meter)?.fromOutings !== true) return true;
  strays.report(entry, `\`${meter}\` counts from outings; a reading of it is not used`);
  return false;
}

/** Ticks of the meter's unit in 24 hours; `null` if it does not count time. */
export function ticksPerDay(meter: Meter): number | null {
  const [unit, hour] = [findUnit(meter.unit), findUnit('h')];
  const perDay = unit === null || hour === null ? null : convert(24, hour, unit);
  return perDay === null ? null : Math.round(perDay * TICKS_PER_UNIT);
}

/** The total of a meter that counts from outings, after each that ended (for an attachment's meter: each with the attachment). */
function countOutings(meter: Meter, { outings, attachments }: MeterSurroundings): readonly MeterPoint[] {
  let total = 0;
  return inOrderOfEnd(outings).flatMap((outing): readonly MeterPoint[] => {
    const spell = meter.attachment === undefined ? null : wornOn(outing, meter.attachment, attachments);
    if (spell === undefined) return [];
    total += outing.ticks;
    const alongside = spell === null || spell.begin.entry === outing.entry ? [] : [spell.begin.entry];
    return [{ entry: outing.entry, when: outing.end, total, shown: unitsOf(total), alongside }];
  });
}

/** `null`: the outing itself names the attachment; a spell: it was on when the outing began; undefined: it was off. */
function wornOn(outing: BareOuting, attachment: string, attachments: MeterSurroundings['attachments']): Spell | null | undefined {
  if (outing.attachments.includes(attachment)) return null;
  const spells = attachments.get(attachment) ?? [];
  return spells.findLast(
    ({ begin, end }) =>
      compareMoments(begin.when, outing.when) <= 0 &&
      (end === null || (end.entry !== outing.entry && compareMoments(outing.when, end.when) < 0)),
  );
}
