/**
 * One meter while its readings are taken in, in order: what counts so far, and what the next reading is held against.
 */
import { unitsOf } from '../values/ticks.js';
import type { Moment } from '../values/moment.js';
import type { EntryId } from './entry.js';
import { NO_BOUND, risesTooFast, withReading } from './rise-bound.js';
import type { RiseBound } from './rise-bound.js';
import type { MeterPoint, Suspect } from './timeline.js';

/** What an entry says that a dial showed. */
export interface Reading {
  readonly entry: EntryId;
  readonly when: Moment;
  /** Ticks of the meter's unit, as shown. */
  readonly shown: number;
  /** The entry that confirms it. */
  readonly confirmedBy: EntryId | null;
}

/** The state of a dial between two readings. Never changed in place: a day is tried out before it is taken in. */
export interface Dial {
  readonly meter: string;
  /** Ticks in 24 h on an hour meter; `null` on a meter that does not count time. */
  readonly ticksPerDay: number | null;
  /** Life total − ticks shown. */
  readonly offset: number;
  readonly last: MeterPoint | null;
  /** Of the readings since the one last confirmed, itself included. */
  readonly bound: RiseBound;
  /** Of all readings that count. */
  readonly lifeBound: RiseBound;
  /** Entries that every later total rests on: replacements, and readings confirmed although the dial fell. */
  readonly pillars: readonly EntryId[];
  /** The reading last confirmed and its confirmation: later rises are measured from it. */
  readonly base: readonly EntryId[];
}

/** What became of a reading. */
export type Taken =
  { readonly kind: 'counts'; readonly point: MeterPoint; readonly dial: Dial } | { readonly kind: 'suspect'; readonly suspect: Suspect };

/** Most entries that a point lists as those it rests on. */
const MOST_PILLARS = 600;

/** A dial of which nothing is known. */
export function newDial(meter: string, ticksPerDay: number | null): Dial {
  return { meter, ticksPerDay, offset: 0, last: null, bound: NO_BOUND, lifeBound: NO_BOUND, pillars: [], base: [] };
}

/** Holds a reading against what counts so far (docs/meaning.md §2) and takes it in if it stands. */
export function takeReading(dial: Dial, reading: Reading): Taken {
  const total = dial.offset + reading.shown;
  const disagrees = disagreement(dial, dial.bound, total, reading.when);
  if (disagrees !== null && reading.confirmedBy === null) {
    const { entry, when } = reading;
    return { kind: 'suspect', suspect: { entry, when, meter: dial.meter, shown: unitsOf(reading.shown), ...disagrees } };
  }
  if (disagrees?.why === 'falls' && reading.confirmedBy !== null) return takeFall(dial, reading, disagrees.against, reading.confirmedBy);
  return takeRise(dial, reading, total);
}

function disagreement(dial: Dial, bound: RiseBound, total: number, when: Moment): Pick<Suspect, 'why' | 'against'> | null {
  if (dial.last !== null && total < dial.last.total) return { why: 'falls', against: dial.last.entry };
  if (dial.ticksPerDay === null) return null;
  const against = risesTooFast(bound, total, when, dial.ticksPerDay);
  return against === null ? null : { why: 'rises-too-fast', against };
}

/** A fall that the owner stands by is a dial that was set back: the life total goes on from where it stood. */
function takeFall(dial: Dial, reading: Reading, against: EntryId, confirmedBy: EntryId): Taken {
  const total = dial.last?.total ?? 0;
  const point = pointOf(reading, total, grown(dial.pillars, against, confirmedBy));
  const pillars = grown(dial.pillars, against, confirmedBy, reading.entry);
  const moved: Dial = { ...dial, offset: total - reading.shown, pillars, base: [reading.entry, confirmedBy] };
  return { kind: 'counts', point, dial: withPoint(moved, point, true) };
}

/** What it rests on beyond the pillars: its own confirmation, or the reading confirmed before it, where only that lets it count. */
function takeRise(dial: Dial, reading: Reading, total: number): Taken {
  const { confirmedBy } = reading;
  const leans = disagreement(dial, dial.lifeBound, total, reading.when) !== null;
  const on = confirmedBy === null ? dial.base : [confirmedBy];
  const point = pointOf(reading, total, leans ? grown(dial.pillars, ...on) : dial.pillars);
  const base = confirmedBy === null ? dial.base : [reading.entry, confirmedBy];
  return { kind: 'counts', point, dial: withPoint({ ...dial, base }, point, confirmedBy !== null) };
}

function pointOf(reading: Reading, total: number, alongside: readonly EntryId[]): MeterPoint {
  const others = alongside.includes(reading.entry) ? alongside.filter((id) => id !== reading.entry) : alongside;
  return { entry: reading.entry, when: reading.when, total, shown: unitsOf(reading.shown), alongside: others };
}

/** The list with more in it, each once; up to a bound, which no real machine's meters come near and no made-up history gets past. */
export function grown(pillars: readonly EntryId[], ...more: readonly EntryId[]): readonly EntryId[] {
  return pillars.length >= MOST_PILLARS ? pillars : [...new Set([...pillars, ...more])];
}

function withPoint(dial: Dial, point: MeterPoint, afresh: boolean): Dial {
  if (dial.ticksPerDay === null) return { ...dial, last: point };
  const add = (bound: RiseBound): RiseBound => withReading(bound, point.entry, point.total, point.when, dial.ticksPerDay ?? 0);
  return { ...dial, last: point, bound: add(afresh ? NO_BOUND : dial.bound), lifeBound: add(dial.lifeBound) };
}
