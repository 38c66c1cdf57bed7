/**
 * The sorts of fact that a history is laid out into, beside readings of meters and doings, which every history has.
 *
 * Each has a reader of its own, so that an engine need carry only those that its schedules ask for. Without a reader there are no facts of that
 * sort: whoever leaves one out has to make sure that nothing asks for them.
 */
import type { Meter } from '../graph/rule-graph.js';
import type { Moment } from '../values/moment.js';
import type { Dated } from './dated-entry.js';
import type { Reading, Settle } from './dial.js';
import type { Entry, EntryId } from './entry.js';
import type { BareOuting } from './read-outings.js';
import type { DayTaken, TakeDay } from './take-day.js';
import type { ScheduleNames } from './schedule-names.js';
import type { StraySink } from './stray.js';
import type { MeterPoint, MeterTrack, Timeline } from './timeline.js';

/** What the reader of one sort of fact goes by. */
export interface Layout {
  /** In force, in order. */
  readonly dated: readonly Dated[];
  readonly names: ScheduleNames;
  readonly now: Moment;
  readonly strays: StraySink;
  readonly outings: readonly BareOuting[];
  /** When the readings of an entry were taken; `null` if that is still to come. */
  readonly takenAt: (dated: Dated) => Moment | null;
}

/** Outings are read first: what is noted with one was read at its end, and some meters count nothing else. */
export interface OutingFacts {
  readonly read: (layout: Pick<Layout, 'dated' | 'names' | 'now' | 'strays'>) => readonly BareOuting[];
  readonly takenAt: (outings: readonly BareOuting[]) => Layout['takenAt'];
  /** The points of a meter that counts from outings. */
  readonly count: (meter: Meter, layout: Pick<Layout, 'outings' | 'now'>, attachments: Timeline['attachments']) => readonly MeterPoint[];
  /** Where such a meter stood at a moment in the middle of the outing that a point is of; `null` where it does not lie in it, or minutes do not tell. */
  readonly cut: (point: MeterPoint | undefined, when: Moment) => MeterPoint | null;
  /** The point, at the moment at which the meter came to so much: that of the reading, or the minute by which so much of the outing had passed. */
  readonly cameTo: (point: MeterPoint, ticks: number) => MeterPoint;
}

/** What owners set right. */
export interface CorrectionFacts {
  readonly voided: (seen: readonly Dated[], known: ReadonlyMap<EntryId, Entry>, strays: StraySink) => ReadonlySet<EntryId>;
  /** Entry → the confirmation that speaks for it. */
  readonly confirmed: (standing: readonly Dated[], known: ReadonlyMap<EntryId, Entry>, strays: StraySink) => ReadonlyMap<EntryId, EntryId>;
  readonly settle: Settle;
  /** A day on which a confirmation had a say in the order of readings, with each reading that is confirmed resting on that. */
  readonly cited: (day: DayTaken, readings: readonly Reading[]) => DayTaken;
}

/** Dials that were taken out and others put in. */
export interface DialFacts {
  /** The dial that an entry says was taken out, and of which meter; `null` for an entry that says no such thing. */
  readonly replacedBy: (dated: Dated) => { readonly meter: string; readonly final: number; readonly initial: number } | null;
  /** Takes in the readings of one day, before and after those among them that are replacements. */
  readonly takeDay: TakeDay;
}

/** One reader for each sort of fact. */
export interface Facts {
  readonly outings: OutingFacts;
  readonly corrections: CorrectionFacts;
  readonly dials: DialFacts;
  readonly attachments: (layout: Layout) => Timeline['attachments'];
  readonly defects: (layout: Layout) => Timeline['defects'];
  readonly events: (layout: Layout) => Timeline['events'];
  readonly instruments: (layout: Layout) => Timeline['instruments'];
  readonly positions: (layout: Layout) => Timeline['positions'];
  readonly refuellings: (layout: Layout) => Timeline['refuellings'];
  readonly statements: (layout: Layout, tracks: ReadonlyMap<string, MeterTrack>) => Timeline['statements'];
  readonly storage: (layout: Layout) => Timeline['storage'];
  readonly topUps: (layout: Layout) => Timeline['topUps'];
  /** The known name that was probably meant by one that nobody knows. */
  readonly meant: (name: string, known: Iterable<string>) => string | undefined;
}
