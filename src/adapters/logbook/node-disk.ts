import { constants } from 'node:fs';
import { link, open, readFile, readdir, realpath, stat, unlink } from 'node:fs/promises';
import type { FileHandle } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import type { AppendFile, Disk } from './disk.js';
import { errorCode } from './logbook-error.js';

/** The real disk. One descriptor opened with `O_APPEND` does all the writing of an append. */
export const nodeDisk: Disk = {
  async resolve(path) {
    try {
      return await realpath(path);
    } catch (error) {
      if (errorCode(error) !== 'ENOENT') throw error;
      return join(await realpath(dirname(path)), basename(path));
    }
  },
  async siblings(path) {
    const names = await readdir(dirname(path));
    return names.filter((name) => name.startsWith(basename(path))).map((name) => join(dirname(path), name));
  },
  async openAppend(path) {
    return appendFile(await open(path, constants.O_RDWR | constants.O_APPEND | constants.O_CREAT, 0o644));
  },
  async read(path) {
    try {
      return await readFile(path);
    } catch (error) {
      if (errorCode(error) === 'ENOENT') return null;
      throw error;
    }
  },
  async writeNew(path, bytes) {
    const handle = await open(path, 'wx', 0o644);
    try {
      await writeAll(handle, bytes);
      await handle.sync();
    } catch (error) {
      await unlink(path);
      throw error;
    } finally {
      await handle.close();
    }
  },
  link,
  async remove(path) {
    try {
      await unlink(path);
    } catch (error) {
      if (errorCode(error) !== 'ENOENT') throw error;
    }
  },
  async syncFolderOf(path) {
    // Windows cannot open a folder for syncing; NTFS journals names by itself.
    if (process.platform === 'win32') return;
    const handle = await open(dirname(path), constants.O_RDONLY);
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
  },
};

async function writeAll(handle: FileHandle, bytes: Uint8Array): Promise<void> {
  for (let done = 0; done < bytes.length;) done += (await handle.write(bytes, done, bytes.length - done, null)).bytesWritten;
}

function appendFile(handle: FileHandle): AppendFile {
  return {
    async readAll() {
      const { size } = await handle.stat();
      const bytes = new Uint8Array(size);
      let done = 0;
      while (done < size) {
        const { bytesRead } = await handle.read(bytes, done, size - done, done);
        if (bytesRead === 0) break;
        done += bytesRead;
      }
      return bytes.subarray(0, done);
    },
    async isStill(path) {
      const [own, named] = await Promise.all([handle.stat({ bigint: true }), stat(path, { bigint: true }).catch(() => null)]);
      return named !== null && own.ino === named.ino && own.dev === named.dev;
    },
    write: async (bytes) => (await handle.write(bytes, 0, bytes.length, null)).bytesWritten,
    sync: () => handle.sync(),
    truncate: (size) => handle.truncate(size),
    close: () => handle.close(),
  };
}
