/**
 * From a bag of entries to a history laid out for questions.
 */
import type { Moment } from '../values/moment.js';
import { dayOf } from '../values/civil.js';
import { ofKind } from './dated-entry.js';
import type { Dated } from './dated-entry.js';
import { entriesInForce } from './entries-in-force.js';
import type { Entry } from './entry.js';
import { gather } from './gather.js';
import { readAttachment } from './read-attachment.js';
import { readDefect } from './read-defect.js';
import { readDoings } from './read-doings.js';
import { readInstruments } from './read-instruments.js';
import { readMeters } from './read-meters.js';
import { type BareOuting, readAt, readOutings } from './read-outings.js';
import { readSpells } from './read-spells.js';
import { readStatements } from './read-statements.js';
import { scheduleNames } from './schedule-names.js';
import type { MachineModel, ScheduleNames } from './schedule-names.js';
import { attachmentEdges, defectEdges, storageEdges } from './edges.js';
import { strayInto } from './stray.js';
import type { Stray, StraySink } from './stray.js';
import type { MachineFacts, MeterPoint, Stamped, Timeline, TopUp } from './timeline.js';

/**
 * Lays out what `entries` say of the machine as of `now` (docs/meaning.md §1 to §3).
 *
 * Total: whatever the entries say, there is a timeline; what cannot be used is among its suspects or strays. The order of `entries`
 * does not matter.
 *
 * @param model the rule graph of the schedule, or the part of it that says what the machine has.
 * @example readTimeline(entries, graph, { day, minute: null }).meters.get('engine')?.points.at(-1)?.total
 */
export function readTimeline(entries: readonly Entry[], model: MachineModel, now: Moment): Timeline {
  const strays: Stray[] = [];
  const sink = strayInto(strays);
  const names = scheduleNames(model);
  const inForce = entriesInForce(entries, now, sink);
  const dated = inForce.entries;
  const bare = readOutings(ofKind(dated, 'outing'), names, now, sink);
  const takenAt = readingsTakenAt(bare);
  const attachments = mapOver(attachmentEdges(dated, names, sink), (edges, id) => readAttachment(id, edges, bare));
  const { tracks, suspects } = readMeters(inForce, { names, outings: bare, attachments, takenAt, strays: sink });
  const noted = notedMeters(tracks, names);
  const metersOf = (entry: string): ReadonlyMap<string, MeterPoint> => noted.get(entry) ?? new Map<string, MeterPoint>();
  return {
    machine: readMachine(dated),
    meters: tracks,
    suspects,
    doings: readDoings(ofKind(dated, 'done'), names, metersOf, sink),
    instruments: readInstruments(dated, names, takenAt, sink),
    outings: bare.map((outing) => ({ ...outing, meters: metersOf(outing.entry) })),
    events: readEvents(dated, names, sink),
    defects: mapOver(defectEdges(dated, names, sink), readDefect),
    attachments,
    positions: readPositions(dated, names, sink),
    storage: readSpells(storageEdges(dated)).map(({ begin, end }) => ({ begin, end })),
    refuellings: ofKind(dated, 'refuelled').map(stamp),
    topUps: readTopUps(dated, names, sink),
    statements: readStatements(ofKind(dated, 'stated'), names, tracks, sink),
    strays: inOrder([...strays, ...findingStrays(dated, names)]),
  };
}

/** When what an entry notes was read: with an outing at its end, so not yet (`null`) while an end that is noted is still to come. */
function readingsTakenAt(outings: readonly BareOuting[]): (dated: Dated) => Moment | null {
  const byEntry = new Map(outings.map((outing) => [outing.entry, outing]));
  return ({ entry, when }) => {
    const outing = byEntry.get(entry.id);
    if (outing === undefined || entry.kind !== 'outing') return when;
    const endIsNoted = entry.until !== undefined || entry.untilOn !== undefined;
    return outing.end === null && endIsNoted ? null : readAt(outing);
  };
}

function stamp({ entry, when }: Dated): Stamped {
  return { entry: entry.id, when };
}

/** Of several, the last is the machine's birth certificate. */
function readMachine(dated: readonly Dated[]): MachineFacts {
  const last = ofKind(dated, 'machine').at(-1)?.entry;
  if (last === undefined) return { entry: null, model: null, serial: null, inService: null };
  const inService = last.inService === undefined ? null : dayOf(last.inService);
  return { entry: last.id, model: last.model ?? null, serial: last.serial ?? null, inService };
}

/** Entry → the points that it carries, of meters that are read. */
function notedMeters(tracks: Timeline['meters'], names: ScheduleNames): ReadonlyMap<string, ReadonlyMap<string, MeterPoint>> {
  const noted = new Map<string, Map<string, MeterPoint>>();
  for (const [meter, { points }] of tracks) {
    if (names.meters.get(meter)?.fromOutings === true) continue;
    for (const point of points) {
      const there = noted.get(point.entry) ?? new Map<string, MeterPoint>();
      noted.set(point.entry, there.set(meter, point));
    }
  }
  return noted;
}

function readEvents(dated: readonly Dated[], names: ScheduleNames, strays: StraySink): Timeline['events'] {
  const known = ofKind(dated, 'event').filter(({ entry }) => strays.has(entry.id, 'event', entry.event, names.events));
  return mapOver(
    gather(known, ({ entry }) => entry.event),
    (entries) => entries.map(stamp),
  );
}

function readPositions(dated: readonly Dated[], names: ScheduleNames, strays: StraySink): Timeline['positions'] {
  const positions = new Map<string, Stamped & { readonly position: string }>();
  for (const { entry, when } of ofKind(dated, 'stands')) {
    for (const [part, position] of Object.entries(entry.positions)) {
      if (!strays.has(entry.id, 'moving part', part, names.parts)) continue;
      const known = names.parts.get(part) ?? new Map<string, unknown>();
      if (strays.has(entry.id, `position of \`${part}\` named`, position, known)) positions.set(part, { entry: entry.id, when, position });
    }
  }
  return positions;
}

function readTopUps(dated: readonly Dated[], names: ScheduleNames, strays: StraySink): readonly TopUp[] {
  return ofKind(dated, 'topped-up').map(({ entry, when }) => {
    const { id, dipstick, supply, litres } = entry;
    const known = dipstick !== undefined && strays.has(id, 'dipstick', dipstick, names.dipsticks);
    const kept = supply !== undefined && strays.has(id, 'supply', supply, names.supplies);
    return { entry: id, when, litres, dipstick: known ? dipstick : null, supply: kept ? supply : null };
  });
}

/** A finding counts whatever it names, but the name of a task that is not there is reported. */
function findingStrays(dated: readonly Dated[], names: ScheduleNames): readonly Stray[] {
  const strays: Stray[] = [];
  const sink = strayInto(strays);
  for (const { entry } of ofKind(dated, 'finding')) if (entry.task !== undefined) sink.has(entry.id, 'task', entry.task, names.tasks);
  return strays;
}

function inOrder(strays: readonly Stray[]): readonly Stray[] {
  const unique = new Map(strays.map((stray) => [`${stray.entry}\n${stray.what}`, stray]));
  return [...unique].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, stray]) => stray);
}

function mapOver<A, B>(map: ReadonlyMap<string, A>, change: (value: A, key: string) => B): ReadonlyMap<string, B> {
  return new Map([...map].map(([key, value]) => [key, change(value, key)]));
}
