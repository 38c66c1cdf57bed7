import type { Entry, EntryId } from '../../engine.js';
import { canonicalJson } from '../../engine.js';
import { sha256 } from '../../base/sha256.js';

/** One id that stood for two different entries. */
export interface IdConflict {
  readonly id: EntryId;
  /** The id under which the second one is kept. */
  readonly kept: EntryId;
  readonly first: Entry;
  readonly second: Entry;
}

/** Takes entries one by one, by id: the same again is nothing new, another content under a known id is kept under an id of its own. */
export interface Gathering {
  readonly entries: ReadonlyMap<EntryId, Entry>;
  /** `same`: already there. `conflict`: kept, under another id. */
  add(
    entry: Entry,
  ): { readonly kind: 'new' } | { readonly kind: 'same' } | ({ readonly kind: 'conflict'; readonly isNew: boolean } & IdConflict);
}

/** An empty gathering. What it ends up with does not depend on whether something was added twice. */
export function gather(): Gathering {
  const entries = new Map<EntryId, Entry>();
  // Of ids that came twice: what the first entry says, so that a thousand more do not spell it out again.
  const firsts = new Map<EntryId, string>();
  return {
    entries,
    add(entry) {
      const first = entries.get(entry.id);
      if (first === undefined) {
        entries.set(entry.id, entry);
        return { kind: 'new' };
      }
      const said = firsts.get(entry.id) ?? canonicalJson(first);
      firsts.set(entry.id, said);
      const also = canonicalJson(entry);
      if (said === also) return { kind: 'same' };
      const kept = otherId(entry.id, also);
      const isNew = !entries.has(kept);
      const second = { ...entry, id: kept };
      entries.set(kept, second);
      return { kind: 'conflict', isNew, id: entry.id, kept, first, second };
    },
  };
}

/** Whether two entries say the same, whatever the order of their members. */
export function sameEntry(a: Entry, b: Entry): boolean {
  return canonicalJson(a) === canonicalJson(b);
}

/** Depends on the content alone, so that merging the same copies again, on another machine, gives the same id. */
function otherId(id: EntryId, said: string): EntryId {
  return `${id.slice(0, 111)}~${sha256(said).slice(0, 8)}`;
}
