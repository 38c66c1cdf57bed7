/**
 * One meter while its readings are taken in, in order: what counts so far, and what the next reading is held against.
 */
import { unitsOf } from '../values/ticks.js';
import type { Moment } from '../values/moment.js';
import type { EntryId } from './entry.js';
import type { Facts } from './facts.js';
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
  /** Of the last reading of a dial that was taken out: what the new one showed when it was put in. */
  readonly initial?: number;
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

/** A dial of which nothing is known. */
export function newDial(meter: string, ticksPerDay: number | null): Dial {
  return { meter, ticksPerDay, offset: 0, last: null, bound: NO_BOUND, lifeBound: NO_BOUND, pillars: [], base: [] };
}

/**
 * Takes in a reading that stands, of a dial whose readings may be confirmed: by itself, or by an owner although it disagrees. Where none is ever
 * confirmed there is nothing to settle.
 */
export type Settle = (dial: Dial, reading: Reading, total: number, disagrees: Disagreement | null) => Taken;

/** Holds a reading against what counts so far (docs/meaning.md §2) and takes it in if it stands. */
export function takeReading(dial: Dial, reading: Reading, facts: Partial<Facts>): Taken {
  const { entry, when } = reading;
  const total = dial.offset + reading.shown;
  const disagrees = disagreement(dial, dial.bound, total, when);
  if (disagrees !== null && reading.confirmedBy === null) {
    const { why, against } = disagrees;
    const shown = unitsOf(reading.shown);
    const alongside = facts.pillars?.(dial, entry, against.alongside) ?? [];
    return { kind: 'suspect', suspect: { entry, when, meter: dial.meter, shown, why, against: against.entry, alongside } };
  }
  if (facts.corrections !== undefined) return facts.corrections.settle(dial, reading, total, disagrees);
  const point = pointOf(reading, total, facts.pillars?.(dial, entry) ?? []);
  return { kind: 'counts', point, dial: { ...dial, last: point, bound: boundWith(dial, dial.bound, point) } };
}

/** What is wrong with a reading, and what it disagrees with. */
export interface Disagreement extends Pick<Suspect, 'why'> {
  readonly against: MeterPoint;
}

/** How a total at a moment disagrees with what counts so far, where it can with the reading just before it; `null` if it does not. */
export function disagreement(dial: Dial, bound: RiseBound, total: number, when: Moment): Disagreement | null {
  if (dial.last !== null && total < dial.last.total) return { why: 'falls', against: dial.last };
  if (dial.ticksPerDay === null) return null;
  const against = risesTooFast(bound, total, when, dial.ticksPerDay);
  if (against === null) return null;
  const justBefore = dial.last === null ? NO_BOUND : boundWith(dial, NO_BOUND, dial.last);
  return { why: 'rises-too-fast', against: risesTooFast(justBefore, total, when, dial.ticksPerDay) ?? against };
}

/** A reading as a point of its track. `alongside`: what it rests on besides itself. */
export function pointOf({ entry, when, shown }: Reading, total: number, alongside: readonly EntryId[]): MeterPoint {
  return { entry, when, total, shown: unitsOf(shown), alongside };
}

/** A bound with one more point in it; the same on a meter that does not count time. */
export function boundWith({ ticksPerDay }: Dial, bound: RiseBound, point: MeterPoint): RiseBound {
  return ticksPerDay === null ? bound : withReading(bound, point, ticksPerDay);
}
