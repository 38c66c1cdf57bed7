import { setTimeout as sleep } from 'node:timers/promises';
import { createWhole } from './create-whole.js';
import type { Disk } from './disk.js';
import type { Chance } from './entry-id.js';
import { holderWords, isGone, readHolder, thisHolder } from './holder.js';
import type { Holder } from './holder.js';
import { LogbookError } from './logbook-error.js';

/** What taking a lock needs from outside. */
export interface LockContext {
  readonly disk: Disk;
  readonly chance: Chance;
  /** Milliseconds to wait for another writer before giving up. */
  readonly patience: number;
}

/**
 * Runs `work` while holding `<path>.lock`, which names its holder. Waits for a live holder up to `patience`.
 *
 * A lock whose holder is certainly gone is cleared away. Two programs that find it at the same time cannot both do so, nor clear a
 * lock that was taken since: see {@link clearIfGone}.
 *
 * @throws LogbookError `busy`, and whatever `work` throws.
 */
export async function withLock<T>(context: LockContext, path: string, work: () => Promise<T>): Promise<T> {
  const lock = `${path}.lock`;
  const cleared = await acquire(context, path, lock);
  try {
    if (cleared) await sweep(context.disk, path);
    return await work();
  } finally {
    // A lock that cannot be removed must not turn what is recorded into an error: it is cleared once this process has ended.
    await context.disk.remove(lock).catch(() => undefined);
  }
}

/** Returns whether a dead program's lock had to be cleared. */
async function acquire(context: LockContext, path: string, lock: string): Promise<boolean> {
  const self = newHolder(context);
  // Counted in waits, not by the clock, which may jump.
  let cleared = false;
  for (let waited = 0; ;) {
    if (await take(context.disk, path, lock, self)) return cleared;
    const bytes = await context.disk.read(lock);
    const holder = bytes === null ? null : readHolder(bytes);
    if (holder !== null && (await clearIfGone(context, path, lock, holder))) {
      cleared = true;
      continue;
    }
    if (waited >= context.patience) throw new LogbookError({ kind: 'busy', path, holder: holderWords(holder) });
    const pause = 2 + context.chance.random(18);
    await sleep(pause);
    waited += pause;
  }
}

function newHolder({ chance }: LockContext): Holder {
  const nonce = Array.from({ length: 16 }, () => chance.random(32).toString(32)).join('');
  return thisHolder(new Date(chance.now()), nonce);
}

async function take(disk: Disk, path: string, lock: string, holder: Holder): Promise<boolean> {
  const bytes = new TextEncoder().encode(`${JSON.stringify(holder)}\n`);
  return await createWhole(disk, lock, `${path}.lock-new-${holder.nonce}`, bytes);
}

/**
 * Removes the lock if its holder is gone. Returns whether the way may be free.
 *
 * INVARIANT: only who has made the warrant named for this very holder may remove the lock, and only if it still stands under that
 * holder. A warrant left by a program that died while clearing is cleared in the same way.
 */
async function clearIfGone(context: LockContext, path: string, lock: string, holder: Holder): Promise<boolean> {
  if (!isGone(holder)) return false;
  const { disk } = context;
  const warrant = `${path}.lock-gone-${holder.nonce}`;
  if (!(await take(disk, path, warrant, newHolder(context)))) {
    const bytes = await disk.read(warrant);
    const other = bytes === null ? null : readHolder(bytes);
    return other === null ? bytes === null : await clearIfGone(context, path, warrant, other);
  }
  const bytes = await disk.read(lock);
  if (bytes !== null && readHolder(bytes)?.nonce === holder.nonce) await disk.remove(lock);
  await disk.remove(warrant);
  return true;
}

/**
 * Removes what programs left that died while taking or clearing a lock. Safe only while holding the lock: the lock that any such
 * warrant speaks of is then gone for good, because no two takings share a nonce.
 */
async function sweep(disk: Disk, path: string): Promise<void> {
  const left = [...(await disk.siblings(`${path}.lock-new-`)), ...(await disk.siblings(`${path}.lock-gone-`))];
  for (const name of left) {
    const bytes = await disk.read(name);
    const holder = bytes === null ? null : readHolder(bytes);
    if (holder === null || isGone(holder)) await disk.remove(name);
  }
}
