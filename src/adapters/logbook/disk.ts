/**
 * The few things a file logbook asks of a disk. Small, so that tests can put a failing, stopping or forgetting disk in its place.
 *
 * Failures reject with an error whose `code` is the system's (`ENOSPC`, `EEXIST`, …).
 */
export interface Disk {
  /** The one name of a file that may have several (symbolic links), so that all writers meet at the same lock. */
  resolve(path: string): Promise<string>;
  /** The paths in the folder of `path` that begin with it. */
  siblings(path: string): Promise<readonly string[]>;
  /** Opens for appending and reading, makes the file if it is not there. */
  openAppend(path: string): Promise<AppendFile>;
  /** The whole file, `null` if there is none. */
  read(path: string): Promise<Uint8Array | null>;
  /** Makes a new file with this content and syncs it. Rejects with `EEXIST` if there is one. Not atomic; leaves nothing when it fails. */
  writeNew(path: string, bytes: Uint8Array): Promise<void>;
  /** Gives a file a second name, at once and whole. Rejects with `EEXIST` if the name is taken. */
  link(from: string, to: string): Promise<void>;
  /** Takes a name away; fine if it is not there. */
  remove(path: string): Promise<void>;
  /** Makes the names in the folder of `path` last over a power cut. */
  syncFolderOf(path: string): Promise<void>;
}

export interface AppendFile {
  readAll(): Promise<Uint8Array>;
  /** Whether `path` still names this very file; an editor or version control may have put another in its place. */
  isStill(path: string): Promise<boolean>;
  /** Writes at the end; returns how many bytes were taken, which may be fewer than given. */
  write(bytes: Uint8Array): Promise<number>;
  sync(): Promise<void>;
  truncate(size: number): Promise<void>;
  close(): Promise<void>;
}
