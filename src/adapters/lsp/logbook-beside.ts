import { existsSync, readFileSync } from 'node:fs';
import type { Entry } from '../../index.js';
import { readLogbookBytes } from '../logbook/read-logbook.js';

/** The entries of the logbook beside a schedule (`tractor.logbook.jsonl` beside `tractor.due`); undefined where there is none to be read. */
export function logbookBeside(schedule: string): readonly Entry[] | undefined {
  const path = schedule.replace(/\.due$/, '.logbook.jsonl');
  if (path === schedule || !existsSync(path)) return undefined;
  try {
    return readLogbookBytes(readFileSync(path)).entries;
  } catch {
    return undefined;
  }
}
