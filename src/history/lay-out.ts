/**
 * From a bag of entries to a history laid out for questions, by the readers that are given.
 */
import { dayOf } from '../values/civil.js';
import type { Moment } from '../values/moment.js';
import { ofKind } from './dated-entry.js';
import type { Dated } from './dated-entry.js';
import { entriesInForce } from './entries-in-force.js';
import type { EntriesInForce } from './entries-in-force.js';
import type { Entry } from './entry.js';
import type { Facts, Layout } from './facts.js';
import { readDoings } from './read-doings.js';
import { readMeters } from './read-meters.js';
import { scheduleNames } from './schedule-names.js';
import type { MachineModel, ScheduleNames } from './schedule-names.js';
import { strayInto } from './stray.js';
import type { Stray, StraySink } from './stray.js';
import type { MachineFacts, MeterPoint, Timeline } from './timeline.js';

/** A timeline with what it was laid out from. */
export interface LaidOut {
  readonly timeline: Timeline;
  readonly inForce: EntriesInForce;
  readonly layout: Layout;
}

/**
 * As `readTimeline`, with readers for some sorts of fact only. There are no facts of a sort that nobody reads, whatever the entries say.
 *
 * @example layOut({ events: readEvents }, entries, graph, { day, minute: null }).events
 */
export function layOut(facts: Partial<Facts>, entries: readonly Entry[], model: MachineModel, now: Moment): Timeline {
  return laidOut(facts, entries, model, now).timeline;
}

/** As {@link layOut}, for whoever means to take in more entries. */
export function laidOut(facts: Partial<Facts>, entries: readonly Entry[], model: MachineModel, now: Moment): LaidOut {
  const found: Stray[] = [];
  const strays = strayInto(found, facts.meant);
  const names = scheduleNames(model);
  const inForce = entriesInForce(facts, entries, now, strays);
  const dated = inForce.entries;
  const bare = facts.outings?.read({ dated, names, now, strays }) ?? [];
  const layout: Layout = { dated, names, now, strays, outings: bare, takenAt: facts.outings?.takenAt(bare) ?? (({ when }) => when) };
  const attachments = facts.attachments?.(layout) ?? new Map();
  const { tracks, suspects } = readMeters(facts, inForce, layout, attachments);
  const noted = notedMeters(tracks, names);
  const metersOf = (entry: string): ReadonlyMap<string, MeterPoint> => noted.get(entry) ?? new Map<string, MeterPoint>();
  strayFindings(dated, names, strays);
  const timeline: Timeline = {
    machine: readMachine(dated),
    meters: tracks,
    suspects,
    doings: readDoings(ofKind(dated, 'done'), names, metersOf, strays),
    instruments: facts.instruments?.(layout) ?? new Map(),
    outings: bare.map((outing) => ({ ...outing, meters: metersOf(outing.entry) })),
    events: facts.events?.(layout) ?? new Map(),
    defects: facts.defects?.(layout) ?? new Map(),
    attachments,
    positions: facts.positions?.(layout) ?? new Map(),
    storage: facts.storage?.(layout) ?? [],
    refuellings: facts.refuellings?.(layout) ?? [],
    topUps: facts.topUps?.(layout) ?? [],
    statements: facts.statements?.(layout, tracks) ?? new Map(),
    // Last: those that read the facts add to it.
    strays: inOrder(found),
  };
  return { timeline, inForce, layout };
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

/** A finding counts whatever it names, but the name of a task that is not there is reported. */
function strayFindings(dated: readonly Dated[], names: ScheduleNames, strays: StraySink): void {
  for (const { entry } of ofKind(dated, 'finding')) if (entry.task !== undefined) strays.has(entry.id, 'task', entry.task, names.tasks);
}

function inOrder(strays: readonly Stray[]): readonly Stray[] {
  const unique = new Map(strays.map((stray) => [`${stray.entry}\n${stray.what}`, stray]));
  return [...unique].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, stray]) => stray);
}
