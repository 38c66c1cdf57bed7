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
  return {
    entries,
    add(entry) {
      const first = entries.get(entry.id);
      if (first === undefined) {
        entries.set(entry.id, entry);
        return { kind: 'new' };
      }
      if (sameEntry(first, entry)) return { kind: 'same' };
      const kept = otherId(entry);
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
function otherId(entry: Entry): EntryId {
  return `${entry.id.slice(0, 111)}~${sha256(canonicalJson(entry)).slice(0, 8)}`;
}
