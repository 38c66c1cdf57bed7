/**
 * The sorts of fact that a history is laid out into, beside readings of meters and doings, which every history has.
 *
 * Each has a reader of its own, so that an engine need carry only those that its schedules ask for. Without a reader there are no facts of that
 * sort: whoever leaves one out has to make sure that nothing asks for them.
 */
import type { Meter } from '../graph/rule-graph.js';
import type { Moment } from '../values/moment.js';
import type { Dated } from './dated-entry.js';
import type { Dial, Reading, Settle } from './dial.js';
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
  /** The track of a meter, if it counts from outings. */
  readonly count: (meter: Meter, layout: Pick<Layout, 'outings' | 'now'>, attachments: Timeline['attachments']) => MeterTrack | undefined;
  /** Whether an entry's reading of a meter is used: not of one that counts from outings, which is reported. */
  readonly isRead: (meter: Meter | undefined, entry: EntryId, strays: StraySink) => boolean;
  /** Where such a meter stood at a moment in the middle of the outing that a point is of; `null` where it does not lie in it, or minutes do not tell. */
  readonly cut: (point: MeterPoint | undefined, when: Moment) => MeterPoint | null;
  /** The point, at the moment at which the meter came to so much: that of the reading, or the minute by which so much of the outing had passed. */
  readonly cameTo: (point: MeterPoint, ticks: number) => MeterPoint;
}

/** What owners set right. */
export interface CorrectionFacts {
  readonly voided: (seen: readonly Dated[], known: ReadonlySet<EntryId>, strays: StraySink) => ReadonlySet<EntryId>;
  /** Entry → the confirmation that speaks for it. */
  readonly confirmed: (standing: readonly Dated[], known: ReadonlySet<EntryId>, strays: StraySink) => ReadonlyMap<EntryId, EntryId>;
  readonly settle: Settle;
  /** A day of readings with minutes and without, of which one is confirmed; `null` where none is. In order of moments, those without minutes first. */
  readonly settleDay: (dial: Dial, inOrder: readonly Reading[]) => DayTaken | null;
}

/** Dials that were taken out and others put in. */
export interface DialFacts {
  /** The last that a dial showed which an entry says was taken out, and of which meter; `null` for an entry that says no such thing. */
  readonly replacedBy: (dated: Dated) => { readonly meter: string; readonly last: Pick<Reading, 'when' | 'shown' | 'initial'> } | null;
  /** Takes in the readings of one day, before and after those among them that are replacements. */
  readonly takeDay: TakeDay;
}

/** One reader for each sort of fact. */
export interface Facts {
  /** One entry for each id; without it there must be no two of the same. */
  readonly sameId: (all: readonly Entry[], strays: StraySink) => readonly Entry[];
  readonly outings: OutingFacts;
  readonly corrections: CorrectionFacts;
  readonly dials: DialFacts;
  /** What a reading rests on besides itself; nothing, where no dial is ever taken out or set back. */
  readonly pillars: (dial: Dial, reading: EntryId, against?: readonly EntryId[]) => readonly EntryId[];
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
