/**
 * A history as explanations look into it: each entry is found, dated and searched for names once, however many tasks rest on it.
 */
import { dateEntry } from '../history/dated-entry.js';
import type { Entry, EntryId, EntryOf } from '../history/entry.js';
import { dayOf, formatDate } from '../values/civil.js';
import { type Day, MINUTES_PER_DAY, type Moment, onDay, parseTime } from '../values/moment.js';
import type { CitedEntry } from './explanation.js';
import { type Named, namedIn, type NamesById } from './names.js';

/** An entry that something rests on. */
export interface KnownEntry {
  /** As it is cited; `null` where its date is none. */
  readonly cited: CitedEntry | null;
  /** What it tells of happened then: a statement's day of doing, a machine's first day in service. */
  readonly tellsOf: Moment | null;
  /** What it mentions of the schedule. */
  readonly names: readonly Named[];
}

/** What now's day has brought. */
export interface Today {
  /** Entries of that day, and outings that were going on then. */
  readonly entries: readonly Entry[];
  /** An outing began or ended on it, or is under way: work may count on both sides of a doing. */
  readonly work: boolean;
  /** An outing that is over by its hours ends on a later day: on that day, what was noted with it will have been read then. */
  readonly endsLater: boolean;
  /** Gauges and dipsticks that were read, where it could not be told whether a reading taken now comes later. */
  readonly read: ReadonlySet<string>;
  /** Those that were read where minutes do not say that it was before now. */
  readonly readByNow: ReadonlySet<string>;
  /** Meters whose dial was read at a minute and confirmed, while now has none: a reading of now that is confirmed would stand before that one. */
  readonly confirmed: ReadonlySet<string>;
}

/** Owns what was found out about a history so far. */
export class KnownHistory {
  /** The entries as they were written. */
  readonly byId: ReadonlyMap<EntryId, Entry>;
  private readonly known = new Map<EntryId, KnownEntry>();
  private day: Today | null = null;
  private stated: ReadonlySet<string> | null = null;

  constructor(
    private readonly entries: readonly Entry[],
    private readonly now: Moment,
    private readonly names: NamesById,
  ) {
    this.byId = new Map(entries.map((entry) => [entry.id, entry]));
  }

  /** What is known of the entry with this id. */
  get(id: EntryId): KnownEntry | undefined {
    const known = this.known.get(id);
    if (known !== undefined) return known;
    const entry = this.byId.get(id);
    return entry === undefined ? undefined : this.keep(entry);
  }

  /** What now's day has brought; the history is gone through at the first asking. */
  get today(): Today {
    this.day ??= todayOf(this.entries, this.now);
    return this.day;
  }

  /** Tasks that are stated to have been done, without a day. */
  get undated(): ReadonlySet<string> {
    this.stated ??= new Set(this.entries.flatMap((entry) => (entry.kind === 'stated' && entry.doneBy === undefined ? [entry.task] : [])));
    return this.stated;
  }

  private keep(entry: Entry): KnownEntry {
    const when = dateEntry(entry)?.when;
    const known: KnownEntry = {
      cited: when === undefined ? null : { id: entry.id, when, entry },
      tellsOf: tellsOf(entry, when ?? null),
      names: namedIn(entry, this.names),
    };
    this.known.set(entry.id, known);
    return known;
  }
}

function tellsOf(entry: Entry, when: Moment | null): Moment | null {
  if (entry.kind === 'stated') return momentOf(entry.doneBy);
  return entry.kind === 'machine' && entry.inService !== undefined ? momentOf(entry.inService) : when;
}

function momentOf(date: string | undefined): Moment | null {
  const day = date === undefined ? null : dayOf(date);
  return day === null ? null : onDay(day);
}

const NONE: ReadonlySet<string> = new Set();

function todayOf(all: readonly Entry[], now: Moment): Today {
  const date = formatDate(now.day);
  const entries = all.filter((entry) => entry.on === date || (entry.kind === 'outing' && goesOn(entry, now.day)));
  return {
    entries,
    work: entries.some((entry) => entry.kind === 'outing'),
    endsLater: entries.some((entry) => entry.kind === 'outing' && entry.hours !== undefined && lastDay(entry, now.day) > now.day),
    read: readIn(entries.filter((entry) => !isBefore(entry, now))),
    readByNow: readIn(entries.filter((entry) => entry.at === undefined || !isBefore(entry, now))),
    confirmed: confirmedAtMinute(all, entries, now),
  };
}

function confirmedAtMinute(all: readonly Entry[], today: readonly Entry[], now: Moment): ReadonlySet<string> {
  const timed = now.minute === null ? today.filter(({ at, meters }) => at !== undefined && meters !== undefined) : [];
  if (timed.length === 0) return NONE;
  const confirmed = new Set(all.map((entry) => (entry.kind === 'confirm' ? entry.entry : null)));
  return new Set(timed.filter(({ id }) => confirmed.has(id)).flatMap(({ meters }) => Object.keys(meters ?? {})));
}

function readIn(entries: readonly Entry[]): ReadonlySet<string> {
  return new Set(entries.flatMap(({ readings }) => Object.keys(readings ?? {})));
}

/** Whether its readings were surely taken before now. */
function isBefore(entry: Entry, now: Moment): boolean {
  const minute = entry.at === undefined ? null : parseTime(entry.at);
  return entry.kind !== 'outing' && now.minute !== null && (minute === null || minute < now.minute);
}

/** Whether an outing began before the day and was going on then. */
function goesOn(outing: EntryOf<'outing'>, today: Day): boolean {
  const day = dayOf(outing.on);
  return day !== null && day < today && lastDay(outing, day) >= today;
}

/** The day on which an outing ended, at the latest; one with no end goes on. */
function lastDay({ at, until, untilOn, hours }: EntryOf<'outing'>, day: Day): number {
  if (untilOn !== undefined) return dayOf(untilOn) ?? day;
  if (until !== undefined) return at !== undefined && until < at ? day + 1 : day;
  if (hours === undefined) return Infinity;
  return at === undefined ? day : day + Math.floor(((parseTime(at) ?? 0) + hours * 60) / MINUTES_PER_DAY);
}
