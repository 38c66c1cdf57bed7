import type { AppendFile, Disk } from '../../../../src/adapters/logbook/disk.js';

/** Thrown where the power goes. */
export class PowerCut extends Error {}

interface Inode {
  now: Uint8Array;
  /** What a power cut leaves for certain. */
  synced: Uint8Array;
}

/**
 * A disk in memory that forgets: after a power cut, a file has what was synced and perhaps part of what was written since, and a
 * name made or removed since the last sync of the folder may be there or not.
 *
 * The model is harsher than most file systems and follows what POSIX leaves open (fsync(2): the name needs its own sync).
 */
export class ForgetfulDisk implements Disk {
  private names = new Map<string, Inode>();
  private syncedNames = new Map<string, Inode>();
  operations = 0;
  /** The operation at which the power goes, counted from 1; none when 0. */
  cutAt = 0;
  /** Bytes that one write takes at most. */
  bite = Infinity;
  /** Bytes that all files together may have. */
  room = Infinity;

  resolve(path: string): Promise<string> {
    return Promise.resolve(path);
  }

  siblings(path: string): Promise<readonly string[]> {
    return Promise.resolve([...this.names.keys()].filter((name) => name.startsWith(path)));
  }

  async openAppend(path: string): Promise<AppendFile> {
    this.step();
    const inode = this.names.get(path) ?? { now: new Uint8Array(), synced: new Uint8Array() };
    this.names.set(path, inode);
    return Promise.resolve(this.file(inode));
  }

  async read(path: string): Promise<Uint8Array | null> {
    return Promise.resolve(this.names.get(path)?.now ?? null);
  }

  async writeNew(path: string, bytes: Uint8Array): Promise<void> {
    this.step();
    if (this.names.has(path)) throw systemError('EEXIST');
    if (this.used() + bytes.length > this.room) throw systemError('ENOSPC');
    const inode: Inode = { now: new Uint8Array(), synced: new Uint8Array() };
    this.names.set(path, inode);
    inode.now = bytes.slice(0, bytes.length >> 1);
    this.step();
    inode.now = bytes.slice();
    this.step();
    inode.synced = inode.now;
    return Promise.resolve();
  }

  async link(from: string, to: string): Promise<void> {
    this.step();
    const inode = this.names.get(from);
    if (inode === undefined) throw systemError('ENOENT');
    if (this.names.has(to)) throw systemError('EEXIST');
    this.names.set(to, inode);
    return Promise.resolve();
  }

  async remove(path: string): Promise<void> {
    this.step();
    this.names.delete(path);
    return Promise.resolve();
  }

  async syncFolderOf(): Promise<void> {
    this.step();
    this.syncedNames = new Map(this.names);
    return Promise.resolve();
  }

  /** The disk as it is found after the power cut: `keep` (0 to 1) of what was not synced has come through. */
  afterCut(keep: number): ForgetfulDisk {
    const after = new ForgetfulDisk();
    const names = keep >= 0.5 ? this.names : this.syncedNames;
    for (const [name, { now, synced }] of names) {
      const common = Math.min(now.length, synced.length);
      // Grown since the sync: part of the growth; cut since: cut or not.
      const found =
        now.length >= synced.length ? now.slice(0, common + Math.floor((now.length - common) * keep)) : keep >= 0.5 ? now : synced;
      after.names.set(name, { now: found, synced: found });
    }
    after.syncedNames = new Map(after.names);
    return after;
  }

  private file(inode: Inode): AppendFile {
    return {
      readAll: () => Promise.resolve(inode.now.slice()),
      isStill: (path) => Promise.resolve(this.names.get(path) === inode),
      write: async (bytes) => {
        this.step();
        const taken = Math.min(bytes.length, this.bite, Math.max(0, this.room - this.used()));
        if (taken === 0) throw systemError('ENOSPC');
        inode.now = Uint8Array.from([...inode.now, ...bytes.subarray(0, taken)]);
        return Promise.resolve(taken);
      },
      sync: async () => {
        this.step();
        inode.synced = inode.now;
        return Promise.resolve();
      },
      truncate: async (size) => {
        this.step();
        inode.now = inode.now.slice(0, size);
        return Promise.resolve();
      },
      close: () => Promise.resolve(),
    };
  }

  private used(): number {
    return [...new Set(this.names.values())].reduce((sum, inode) => sum + inode.now.length, 0);
  }

  private step(): void {
    this.operations += 1;
    if (this.cutAt > 0 && this.operations >= this.cutAt) throw new PowerCut();
  }
}

function systemError(code: string): Error {
  return Object.assign(new Error(code), { code });
}
