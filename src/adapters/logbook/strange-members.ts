import type { Entry, EntryId } from '../../engine.js';
import type { LogbookLine } from './logbook.js';

/** What the line of a logbook has besides its entry. */
const OF_THE_LINE: ReadonlySet<string> = new Set(['seq', 'accepts', 'hash']);

/** The members of a value that the entry read from it does not have: they are kept where they stand, and not used. */
export function strangeMembers(value: object, entry: Entry): Readonly<Record<string, unknown>> {
  const strange: Record<string, unknown> = {};
  for (const name of Object.keys(value)) {
    if (Object.hasOwn(entry, name) || OF_THE_LINE.has(name)) continue;
    const member: unknown = Reflect.get(value, name);
    if (member !== undefined) strange[name] = member;
  }
  return strange;
}

/**
 * Entries as their lines have them, with the members that no entry has: what takes entries from one logbook into another loses nothing.
 *
 * @returns the entry of that id with what its line has besides; an entry of no line as it is.
 */
export function asWritten(lines: readonly LogbookLine[]): (entry: Entry, id?: EntryId) => Entry {
  const besides = new Map<EntryId, Readonly<Record<string, unknown>>>();
  for (const { entry, text } of lines) {
    if (entry === null) continue;
    const strange = strangeMembers(JSON.parse(text) as object, entry);
    if (Object.keys(strange).length > 0) besides.set(entry.id, strange);
  }
  return (entry, id = entry.id) => ({ ...besides.get(id), ...entry });
}
