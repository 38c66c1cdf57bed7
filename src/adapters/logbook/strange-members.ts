import type { Entry } from '../../engine.js';

/** What the line of a logbook has besides its entry. */
const OF_THE_LINE: ReadonlySet<string> = new Set(['seq', 'accepts', 'hash']);

/** The members of a value that the entry read from it does not have: they are kept where they stand, and not used. */
export function strangeMembers(value: object, entry: Entry): Readonly<Record<string, unknown>> {
  const own = Object.entries(value).filter(([name]) => !Object.hasOwn(entry, name) && !OF_THE_LINE.has(name));
  return Object.fromEntries(own.filter(([, member]) => member !== undefined));
}
