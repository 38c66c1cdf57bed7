import type { Disk } from './disk.js';
import { errorCode } from './logbook-error.js';

const NO_LINKS: ReadonlySet<string> = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK', 'EINVAL', 'EXDEV']);

/**
 * Makes a file that appears with its whole content or not at all: written under a passing name, then linked to its own.
 *
 * Returns `false` if it was not made: the name is taken. Where the file system has no links (FAT), it is made in place, and a program killed halfway
 * leaves an incomplete file; a lock like that counts as held.
 *
 * @throws the disk's own error.
 */
export async function createWhole(disk: Disk, path: string, passing: string, bytes: Uint8Array): Promise<boolean> {
  let written = false;
  try {
    await disk.writeNew(passing, bytes);
    written = true;
    await disk.link(passing, path);
    return true;
  } catch (error) {
    // ENOENT: somebody who cleaned up took our passing name for a dead program's. Nothing is lost; the caller tries again.
    if (errorCode(error) === 'EEXIST' || (errorCode(error) === 'ENOENT' && written)) return false;
    if (!NO_LINKS.has(errorCode(error))) throw error;
    return await createInPlace(disk, path, bytes);
  } finally {
    await disk.remove(passing);
  }
}

async function createInPlace(disk: Disk, path: string, bytes: Uint8Array): Promise<boolean> {
  try {
    await disk.writeNew(path, bytes);
    return true;
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return false;
    throw error;
  }
}
