/**
 * The folder of what the command keeps for itself between runs: what V8 made of its files (`start.ts`), and compiled schedules
 * (`kept-graph.ts`).
 *
 * Nothing is lost with it, and where it cannot be read or written the command does without. docs/command-line.md says where it lies. Node 22 could keep the
 * former by itself (`module.enableCompileCache`), Node 20 cannot.
 */
import { closeSync, fstatSync, fsyncSync, mkdirSync, openSync, readdirSync, readFileSync, renameSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';

/** The folder of the cache, or `null` for none. `DUEWRIGHT_CACHE` names another; empty, it turns the cache off. */
export function cacheFolder(env: NodeJS.ProcessEnv, platform: NodeJS.Platform): string | null {
  const named = env['DUEWRIGHT_CACHE'];
  if (named !== undefined) return named === '' ? null : named;
  const home = env['HOME'] ?? '';
  if (platform === 'win32') return under(env['LOCALAPPDATA'], 'duewright', 'cache');
  if (platform === 'darwin') return under(home, 'Library', 'Caches', 'duewright');
  return under(env['XDG_CACHE_HOME'], 'duewright') ?? under(home, '.cache', 'duewright');
}

function under(folder: string | undefined, ...names: readonly string[]): string | null {
  return folder === undefined || folder === '' ? null : join(folder, ...names);
}

/** What was kept under a name, or undefined. Only what this user alone can have written is believed: it is run. */
export function readKept(folder: string, name: string): Buffer | undefined {
  let file: number | undefined;
  try {
    file = openSync(join(folder, name), 'r');
    const { mode, uid } = fstatSync(file);
    // Windows has neither; there the folder is the user's own.
    const own = process.getuid === undefined || (uid === process.getuid() && (mode & 0o022) === 0);
    return own ? readFileSync(file) : undefined;
  } catch {
    return undefined;
  } finally {
    if (file !== undefined) closeSync(file);
  }
}

/** Keeps something whole or not at all, and drops what other builds of the command (names with another beginning) have left. */
export function keep(folder: string, build: string, name: string, data: Uint8Array): void {
  const part = join(folder, `${name}.${process.pid}.part`);
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const file = openSync(part, 'wx', 0o600);
    try {
      writeSync(file, data);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(part, join(folder, name));
    const stale = readdirSync(folder).filter((old) => !old.startsWith(build) && /\.(?:code|graph)$/.test(old));
    for (const old of stale) rmSync(join(folder, old), { force: true });
  } catch {
    drop(part);
  }
}

function drop(path: string): void {
  try {
    rmSync(path, { force: true });
  } catch {
    // There is no such folder: nothing was written.
  }
}
