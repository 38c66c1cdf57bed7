import { compareTexts } from '../base/compare-texts.js';
import { dayOf } from '../values/civil.js';
import type { Moment } from '../values/moment.js';
import { compareMoments, parseTime } from '../values/moment.js';
import type { Entry, EntryOf, EntryKind } from './entry.js';
import type { Stamped } from './timeline.js';

/** An entry with the moment it happened at. */
export interface Dated<E extends Entry = Entry> {
  readonly entry: E;
  readonly when: Moment;
}

/** When an entry says that it happened; `null` where its date is none (an entry that never went through `validateEntry`). */
export function dateEntry<E extends Entry>(entry: E): Dated<E> | null {
  const day = dayOf(entry.on);
  if (day === null) return null;
  return { entry, when: { day, minute: entry.at === undefined ? null : parseTime(entry.at) } };
}

/** The order of a history: by moment, ties by id, so that it never depends on how the entries were stored. */
export function compareDated(a: Dated, b: Dated): number {
  return compareMoments(a.when, b.when) || compareTexts(a.entry.id, b.entry.id);
}

/** When it happened, by which entry. */
export function stamp({ entry, when }: Dated): Stamped {
  return { entry: entry.id, when };
}

/** Those of one kind, in the order given. */
export function ofKind<K extends EntryKind>(entries: readonly Dated[], kind: K): readonly Dated<EntryOf<K>>[] {
  return entries.filter((dated): dated is Dated<EntryOf<K>> => dated.entry.kind === kind);
}
