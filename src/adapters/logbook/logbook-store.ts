import type { Logbook } from './logbook.js';
import type { AppendOptions, Draft, Receipt } from './plan-append.js';

/**
 * Where a machine's logbook is kept. The file and the memory implementation are ours; an embedder brings a database of their own.
 *
 * INVARIANT: once `append` has resolved, every entry with a receipt shows in each later `read`, whatever happens to the program or
 * the power. If it rejects, the caller must take none as recorded. Entries of one call stand together, never interleaved.
 */
export interface LogbookStore {
  /** Everything on record. Never waits for a writer. */
  read(): Promise<Logbook>;
  /**
   * Records the drafts, all or none acknowledged.
   *
   * @throws LogbookError when it cannot be done; the message says why, its `help` what to do.
   */
  append(drafts: readonly Draft[], options?: AppendOptions): Promise<readonly Receipt[]>;
}
