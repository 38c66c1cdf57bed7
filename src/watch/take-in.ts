/**
 * A timeline with one more entry, without laying out the rest anew: the entry is read by itself, with the readers that every history is read
 * with, and what it says is put where it belongs in the order of the history. Only where facts build on one another (a meter, spells) are the
 * entries that name the same thing read again.
 *
 * INVARIANT: the result is what laying out all entries anew gives; where that is not sure, there is none. An outing, a correction, a replaced
 * meter, a machine's papers reach too far, and so does whatever puts what was read before in another light.
 */
import { compareTexts } from '../base/compare-texts.js';
import { compareDated, type Dated, dateEntry, ofKind } from '../history/dated-entry.js';
import type { Entry } from '../history/entry.js';
import { everyFact } from '../history/every-fact.js';
import type { Layout } from '../history/facts.js';
import type { LaidOut } from '../history/lay-out.js';
import { readDoings } from '../history/read-doings.js';
import { type Stray, strayInto } from '../history/stray.js';
import type { MeterPoint, Stamped, Timeline } from '../history/timeline.js';
import { compareMoments, countsAt, isAfter, type Moment } from '../values/moment.js';
import { meterTaken, type MetersTaken } from './meters-taken.js';

/** Takes in one entry more; `null` where everything has to be laid out anew. `entries` are those that were laid out. */
export function takeIn(before: LaidOut, entries: readonly Entry[], entry: Entry): LaidOut | null {
  const { layout } = before;
  const added = dateEntry(entry);
  if (added === null || !countsAt(added.when, layout.now) || reachesFar(entry, layout) || entries.some((other) => speaksOf(other, entry)))
    return null;
  const dated = inserted(layout.dated, added, compareDated);
  const inForce = { ...before.inForce, entries: dated };
  const whole: Layout = { ...layout, dated, strays: strayInto([]) };
  const meters = meterTaken(before, inForce, whole, added);
  if (meters === null) return null;
  const strays: Stray[] = [];
  const timeline = grown(before.timeline, whole, { ...whole, dated: [added], strays: strayInto(strays) }, added, meters);
  return strays.length > 0 ? null : { timeline, inForce, layout: { ...layout, dated } };
}

/**
 * The same timeline at a later moment; `null` where everything has to be laid out anew: an outing goes on, or ends with now. Nothing may have
 * come to count in between.
 */
export function passTime({ timeline, inForce, layout }: LaidOut, now: Moment): LaidOut | null {
  const isLater = !isAfter(layout.now, now) && (layout.now.minute === null) === (now.minute === null);
  if (!isLater || layout.outings.some(({ end }) => end === null || !isAfter(layout.now, end))) return null;
  return { timeline, inForce, layout: { ...layout, now } };
}

/** What alters more than the facts that it names. */
function reachesFar(entry: Entry, { names }: Layout): boolean {
  switch (entry.kind) {
    case 'outing':
    case 'machine':
    case 'meter-replaced':
    case 'void':
    case 'confirm':
      return true;
    case 'attached':
    case 'detached':
      return [...names.meters.values()].some(({ fromOutings }) => fromOutings);
    default:
      return false;
  }
}

/** Whether another entry has its id, or voids or confirms it. */
function speaksOf(other: Entry, { id }: Entry): boolean {
  return other.id === id || ((other.kind === 'void' || other.kind === 'confirm') && other.entry === id);
}

function grown(old: Timeline, whole: Layout, alone: Layout, { entry }: Dated, meters: MetersTaken): Timeline {
  const metersOf = (): ReadonlyMap<string, MeterPoint> => meters.noted;
  if (entry.kind === 'finding' && entry.task !== undefined) alone.strays.has(entry.id, 'task', entry.task, alone.names.tasks);
  // Read alone for what it names that is not there.
  const [defects, attachments, statements] = [
    everyFact.defects(alone),
    everyFact.attachments(alone),
    everyFact.statements(alone, meters.tracks),
  ];
  const hasDefect = entry.kind === 'done' || defects.size > 0 || entry.kind === 'defect-closed';
  const hasAttachment = [...attachments.values()].some(({ length }) => length > 0) || entry.kind === 'detached';
  const saysHow = statements.size > 0 || (meters.noted.size > 0 && old.statements.size > 0);
  return {
    ...old,
    meters: meters.tracks,
    suspects: meters.suspects,
    doings: merged(old.doings, readDoings(ofKind(alone.dated, 'done'), alone.names, metersOf, alone.strays)),
    instruments: merged(old.instruments, everyFact.instruments(alone)),
    events: merged(old.events, everyFact.events(alone)),
    refuellings: everyFact.refuellings(alone).reduce(put, old.refuellings),
    topUps: everyFact.topUps(alone).reduce(put, old.topUps),
    positions: lastOfEach(old.positions, everyFact.positions(alone)),
    defects: hasDefect ? everyFact.defects(whole) : old.defects,
    attachments: hasAttachment ? everyFact.attachments(whole) : old.attachments,
    storage: entry.kind === 'storage' ? everyFact.storage(whole) : old.storage,
    statements: saysHow ? everyFact.statements({ ...whole, dated: ofKind(whole.dated, 'stated') }, meters.tracks) : old.statements,
  };
}

function merged<T extends Stamped>(
  old: ReadonlyMap<string, readonly T[]>,
  more: ReadonlyMap<string, readonly T[]>,
): ReadonlyMap<string, readonly T[]> {
  if (more.size === 0) return old;
  const all = new Map(old);
  for (const [name, items] of more) all.set(name, items.reduce<readonly T[]>(put, all.get(name) ?? []));
  return all;
}

function lastOfEach(old: Timeline['positions'], more: Timeline['positions']): Timeline['positions'] {
  const later = [...more].filter(([part, stamp]) => inOrder(old.get(part) ?? stamp, stamp) <= 0);
  return later.length === 0 ? old : new Map([...old, ...later]);
}

function put<T extends Stamped>(list: readonly T[], item: T): readonly T[] {
  return inserted(list, item, inOrder);
}

function inOrder(a: Stamped, b: Stamped): number {
  return compareMoments(a.when, b.when) || compareTexts(a.entry, b.entry);
}

/** The list with one more item, in order; most come last. */
function inserted<T>(list: readonly T[], item: T, compare: (a: T, b: T) => number): readonly T[] {
  const at = list.findLastIndex((other) => compare(other, item) <= 0) + 1;
  return [...list.slice(0, at), item, ...list.slice(at)];
}
