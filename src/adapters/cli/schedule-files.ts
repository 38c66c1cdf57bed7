import { realpathSync, statSync } from 'node:fs';
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { readText } from './read-text.js';

/** Four bytes for each of the characters that a file may have, and more than that. */
const MOST_BYTES = 4_194_304;

/** A schedule's file and the files beside it, as the compiler asks for them. */
export interface ScheduleFiles {
  /** The schedule's own name within its folder: the same wherever the folder lies, so that the compiled graph is too. */
  readonly name: string;
  /** The text of another file by its path from that folder; undefined where there is none to be had. */
  readonly load: (path: string) => string | undefined;
  /** What to call a file when speaking to the person who typed the schedule's path. */
  readonly shown: (path: string) => string;
}

/**
 * Gives a schedule the files of its own folder and below, and no others.
 *
 * The path is judged again after every symbolic link has been followed, because a link inside the folder may lead out of it.
 */
export function scheduleFiles(schedule: string): ScheduleFiles {
  const folder = realFolder(dirname(resolve(schedule)));
  const name = basename(schedule);
  return {
    name,
    load: (path) => {
      const file = realFileWithin(folder, path);
      const read = file === undefined ? undefined : readText(file);
      return read?.ok === true ? read.value : undefined;
    },
    shown: (path) => join(dirname(schedule), path).replaceAll(sep, '/'),
  };
}

function realFolder(folder: string): string {
  try {
    return realpathSync(folder);
  } catch {
    return folder;
  }
}

function realFileWithin(folder: string, path: string): string | undefined {
  try {
    const file = realpathSync(resolve(folder, path));
    return isWithin(folder, file) && isPlain(file) ? file : undefined;
  } catch {
    return undefined;
  }
}

/** Neither a pipe that would keep us waiting nor a device; nor so large that reading it would be the harm. What is over the limit is still told as such. */
function isPlain(file: string): boolean {
  const about = statSync(file);
  return about.isFile() && about.size <= MOST_BYTES;
}

function isWithin(folder: string, file: string): boolean {
  const path = relative(folder, file);
  return path !== '' && path !== '..' && !path.startsWith(`..${sep}`) && !isAbsolute(path);
}
