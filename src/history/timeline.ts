/**
 * A history laid out for questions: what happened, in the order in which it happened.
 *
 * INVARIANT: two arrays that hold the same entries in different orders give equal timelines (ties are broken by id). Voided
 * entries, voids and entries dated after `now` never show. Suspect meter readings show only in `suspects`, until confirmed.
 */
import type { Day, Moment } from '../values/moment.js';
import type { EntryId } from './entry.js';

/** A fact with the entry that states it. */
export interface Stamped {
  readonly entry: EntryId;
  readonly when: Moment;
}

/** A meter's life total at a moment, in ticks (1/36000 of the unit), summed over replaced meters. */
export interface MeterPoint extends Stamped {
  readonly total: number;
  /** What the dial showed, in the meter's unit. */
  readonly shown: number;
  /**
   * Other entries that this point rests on: replacements that shift it, the confirmation that lets a suspect reading count.
   *
   * On a meter that counts from outings it rests on every point before it as well; those are not listed.
   */
  readonly alongside: readonly EntryId[];
  /** On a meter that counts from outings: when the one that ended here (or goes on until now) began, and the ticks that passed in it. */
  readonly passed?: { readonly since: Moment; readonly ticks: number };
}

/** Readings of one meter that count, in order; `total` never falls along the array. */
export interface MeterTrack {
  readonly points: readonly MeterPoint[];
}

/** A reading that is kept but not used until the owner confirms or voids it. */
export interface Suspect extends Stamped {
  readonly meter: string;
  readonly shown: number;
  readonly why: 'falls' | 'rises-too-fast';
  /** The entry that it disagrees with. */
  readonly against: EntryId;
  /** Entries that this rests on besides: replacements that shift its total, the confirmation that lets the other count, which may be among them. */
  readonly alongside: readonly EntryId[];
}

/** One task recorded as done. `meters` are the values noted in the same entry, as life totals in ticks. */
export interface Doing extends Stamped {
  readonly meters: ReadonlyMap<string, MeterPoint>;
}

/** What a gauge or dipstick read. */
export interface InstrumentPoint extends Stamped {
  /** Gauge units; for a dipstick 0 is low, 1 is full, −Infinity somewhere below low, Infinity somewhere above full. */
  readonly value: number;
}

/** Time that an outing spent in one duty. */
export interface DutyHours {
  readonly duty: string;
  /** Ticks of an hour. */
  readonly ticks: number;
}

/** Work with the machine. */
export interface Outing extends Stamped {
  /** `when` is the start. `null` while it is still under way. */
  readonly end: Moment | null;
  /** Time at work in ticks of an hour: clock times if both are noted, else the hours noted, else 0; so far, while under way. */
  readonly ticks: number;
  readonly duties: readonly DutyHours[];
  readonly attachments: readonly string[];
  readonly shift: string | null;
  readonly meters: ReadonlyMap<string, MeterPoint>;
}

/** One spell of something that begins and ends; `end` is `null` while it lasts. */
export interface Spell {
  readonly begin: Stamped;
  readonly end: Stamped | null;
}

/** A defect from when it was found until it was closed. */
export interface DefectSpell extends Spell {
  /** The class last noted, with the entry that noted it; `null` when none was. */
  readonly class: { readonly name: string; readonly by: Stamped } | null;
}

/** What the owner states about a task without a record. */
export interface Statement extends Stamped {
  readonly doneBy: Day | null;
  /** Meter id → life total in ticks, about. */
  readonly doneAt: ReadonlyMap<string, number>;
  /** Meter id → the entries that say which dial was in place then, where it was not the first. */
  readonly dials: ReadonlyMap<string, readonly EntryId[]>;
  readonly words: string | null;
}

/** Fluid that was filled up. */
export interface TopUp extends Stamped {
  readonly dipstick: string | null;
  readonly supply: string | null;
  readonly litres: number;
}

/** The machine's birth certificate; all `null` where there is none. */
export interface MachineFacts {
  readonly entry: EntryId | null;
  readonly model: string | null;
  readonly serial: number | null;
  /** When it entered service, if known; its meters stood at their first point or at 0. */
  readonly inService: Day | null;
}

/** The whole history. */
export interface Timeline {
  readonly machine: MachineFacts;
  readonly meters: ReadonlyMap<string, MeterTrack>;
  readonly suspects: readonly Suspect[];
  /** Task id → doings in order, as recorded (what a task covers is the assessor's business). */
  readonly doings: ReadonlyMap<string, readonly Doing[]>;
  readonly instruments: ReadonlyMap<string, readonly InstrumentPoint[]>;
  readonly outings: readonly Outing[];
  readonly events: ReadonlyMap<string, readonly Stamped[]>;
  readonly defects: ReadonlyMap<string, readonly DefectSpell[]>;
  readonly attachments: ReadonlyMap<string, readonly Spell[]>;
  /** Part → where it was last left. */
  readonly positions: ReadonlyMap<string, Stamped & { readonly position: string }>;
  readonly storage: readonly Spell[];
  readonly refuellings: readonly Stamped[];
  readonly topUps: readonly TopUp[];
  readonly statements: ReadonlyMap<string, readonly Statement[]>;
  /** Entries that name something the schedule does not have, or void or confirm an entry that is not there: kept, reported, not used. */
  readonly strays: readonly { readonly entry: EntryId; readonly what: string }[];
}
