import type { Entry } from '../../engine.js';
import { gather } from './gather-entries.js';
import type { IdConflict } from './gather-entries.js';

/** What two copies that grew apart come to. */
export interface Merge {
  /** Everything from both, each once. */
  readonly entries: readonly Entry[];
  /** What the first copy lacks: append these to it, and it is whole. Nothing that stands in it is rewritten. */
  readonly toAppend: readonly Entry[];
  /** The same id with different content: both are kept, the second under an id of its own; somebody must look which one holds. */
  readonly conflicts: readonly IdConflict[];
  /** Entries that void or confirm an id in conflict: it is uncertain which of the two they mean. */
  readonly uncertain: readonly Entry[];
}

/**
 * Merges two copies by the ids of their entries, without loss.
 *
 * Merging the same copy again adds nothing, and merging either way round keeps the same facts; which of two conflicting entries
 * keeps the id is decided by which copy comes first.
 *
 * @example mergeLogbooks(mine.entries, hers.entries).toAppend // what I lack
 */
export function mergeLogbooks(ours: readonly Entry[], theirs: readonly Entry[]): Merge {
  const gathering = gather();
  for (const entry of ours) gathering.add(entry);
  const toAppend: Entry[] = [];
  const conflicts: IdConflict[] = [];
  for (const entry of theirs) {
    const added = gathering.add(entry);
    if (added.kind === 'new') toAppend.push(entry);
    if (added.kind !== 'conflict') continue;
    if (added.isNew) toAppend.push(added.second);
    conflicts.push({ id: added.id, kept: added.kept, first: added.first, second: added.second });
  }
  const entries = [...gathering.entries.values()];
  const disputed = new Set(conflicts.map((conflict) => conflict.id));
  const uncertain = entries.filter((entry) => (entry.kind === 'void' || entry.kind === 'confirm') && disputed.has(entry.entry));
  return { entries, toAppend, conflicts, uncertain };
}
