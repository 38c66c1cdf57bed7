import type { EntryId } from './entry.js';
import type { Facts } from './facts.js';

/** Something that an entry says and the schedule or the history knows nothing of: kept, reported, not used. */
export interface Stray {
  readonly entry: EntryId;
  readonly what: string;
}

/**
 * Where strays are reported to. Only the first of many alike is kept, so that a history written for another machine
 * costs no more than one near-name search per name.
 */
export interface StraySink {
  /** Whether `known` has the name; if not, it is reported as "no `kind` of that name". */
  has(entry: EntryId, kind: string, name: string, known: ReadonlyMap<string, unknown>): boolean;
  report(entry: EntryId, what: string): void;
}

/** A sink that adds to `strays`. `meant` finds the name that was probably meant; without it nothing is suggested. */
export function strayInto(strays: Stray[], meant?: Facts['meant']): StraySink {
  const words = new Map<string, string>();
  return {
    has(entry, kind, name, known) {
      if (known.has(name)) return true;
      const key = `${kind} ${name}`;
      const what = words.get(key) ?? unknownName(kind, name, meant?.(name, known.keys()));
      words.set(key, what);
      strays.push({ entry, what });
      return false;
    },
    report(entry, what) {
      strays.push({ entry, what });
    },
  };
}

function unknownName(kind: string, name: string, nearest: string | undefined): string {
  return `There is no ${kind} \`${name}\` in this schedule${nearest === undefined ? '' : `; did you mean \`${nearest}\`?`}`;
}
