import { randomInt } from 'node:crypto';
import { createWhole } from './create-whole.js';
import { sha256 } from '../../base/sha256.js';
import type { AppendFile, Disk } from './disk.js';
import type { Chance } from './entry-id.js';
import { withLock } from './lock.js';
import type { LogbookStore } from './logbook-store.js';
import { LogbookError, asLogbookError } from './logbook-error.js';
import { nodeDisk } from './node-disk.js';
import { planAppend } from './plan-append.js';
import type { AppendOptions, Draft, Receipt } from './plan-append.js';
import { readLogbookBytes, wholeLines } from './read-logbook.js';

/** What tests and embedders may put in place of the computer's own. */
export interface FileLogbookOptions {
  readonly disk?: Disk;
  readonly chance?: Chance;
  /** Milliseconds to wait for another writer; 10,000 if not given. */
  readonly patience?: number;
}

const ATTEMPTS = 5;

/** The clock and the chance of this computer. */
export const systemChance: Chance = { now: () => Date.now(), random: (below) => randomInt(below) };

/**
 * A logbook in a file: one JSON entry a line, appended only. The folder must exist; the file is made by the first append.
 *
 * Appending holds `<path>.lock`, sets an unfinished last line aside as `<path>.torn-…`, writes all lines through one append
 * descriptor, syncs, and only then acknowledges. What could not be written to its end is taken back.
 *
 * @example await fileLogbook('tarn-55.jsonl').append([{ kind: 'reading', on: '2026-05-12', meters: { engine: 1300 } }])
 */
export function fileLogbook(path: string, options: FileLogbookOptions = {}): LogbookStore {
  const context = { disk: options.disk ?? nodeDisk, chance: options.chance ?? systemChance, patience: options.patience ?? 10_000 };
  return {
    async read() {
      try {
        return readLogbookBytes((await context.disk.read(path)) ?? new Uint8Array());
      } catch (error) {
        throw asLogbookError(path, error);
      }
    },
    async append(drafts, appendOptions) {
      try {
        const real = await context.disk.resolve(path);
        return await withLock(context, real, () => appendHeld(context.disk, context.chance, real, drafts, appendOptions));
      } catch (error) {
        throw asLogbookError(path, error);
      }
    },
  };
}

/** Goes again when another program put another file in place of ours meanwhile: what was written into the old one is gone with it. */
async function appendHeld(
  disk: Disk,
  chance: Chance,
  path: string,
  drafts: readonly Draft[],
  options?: AppendOptions,
): Promise<readonly Receipt[]> {
  for (let attempt = 0; attempt < ATTEMPTS; attempt += 1) {
    const receipts = await appendOnce(disk, chance, path, drafts, options);
    if (receipts !== null) return receipts;
  }
  throw new LogbookError({ kind: 'disk', path, what: 'another program keeps putting other files in its place' });
}

async function appendOnce(
  disk: Disk,
  chance: Chance,
  path: string,
  drafts: readonly Draft[],
  options?: AppendOptions,
): Promise<readonly Receipt[] | null> {
  const file = await disk.openAppend(path);
  try {
    const bytes = await file.readAll();
    // Also when the file is there but empty: whoever made it may have died before its name was synced.
    if (bytes.length === 0) await disk.syncFolderOf(path);
    const size = await setTornTailAside(disk, path, file, bytes);
    const plan = planAppend(path, readLogbookBytes(bytes.subarray(0, size)), drafts, chance, options);
    const lineFeed = size > 0 && bytes[size - 1] !== 0x0a ? '\n' : '';
    // What is acknowledged again may come from a writer that died before it had synced.
    if (plan.text === '') await file.sync();
    else await writeOrTakeBack(path, file, size, new TextEncoder().encode(lineFeed + plan.text));
    return (await file.isStill(path)) ? plan.receipts : null;
  } finally {
    await file.close();
  }
}

/** Returns the size that the file has now. The tail is safe under its own name before it is cut off here. */
async function setTornTailAside(disk: Disk, path: string, file: AppendFile, bytes: Uint8Array): Promise<number> {
  const size = wholeLines(bytes);
  if (size === bytes.length) return size;
  const tail = bytes.subarray(size);
  // Named for what it holds: doing this again after dying halfway gives the same file.
  const name = `${path}.torn-${size}-${sha256(String(tail)).slice(0, 8)}`;
  await disk.remove(`${name}.new`);
  await createWhole(disk, name, `${name}.new`, tail);
  await disk.syncFolderOf(name);
  await file.truncate(size);
  await file.sync();
  return size;
}

async function writeOrTakeBack(path: string, file: AppendFile, size: number, bytes: Uint8Array): Promise<void> {
  try {
    for (let done = 0; done < bytes.length;) {
      const taken = await file.write(bytes.subarray(done));
      if (taken === 0) throw new LogbookError({ kind: 'disk', path, what: 'it took no more bytes' });
      done += taken;
    }
    await file.sync();
  } catch (error) {
    await takeBack(file, size);
    throw error;
  }
}

/** Best effort: what stays behind is a torn or unacknowledged tail, which the next append deals with. */
async function takeBack(file: AppendFile, size: number): Promise<void> {
  try {
    await file.truncate(size);
    await file.sync();
  } catch {
    // The first error is the one to report.
  }
}
