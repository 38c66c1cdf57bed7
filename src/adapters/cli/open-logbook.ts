import { readFileSync } from 'node:fs';
import type { Entry } from '../../engine.js';
import { describeLogbookProblem } from './describe-logbook-problem.js';
import { readLogbookBytes } from '../logbook/read-logbook.js';
import { describeFileFailure } from './describe-file-failure.js';
import { type Parsed, refused, understood } from './parsed.js';

/** The entries of a logbook that can be used, and one sentence for everything in it that cannot, with its line. */
export interface OpenedLogbook {
  readonly entries: readonly Entry[];
  readonly remarks: readonly string[];
}

/** Reads a logbook; `-` is the standard input. Broken lines are remarked upon and the rest is used. */
export function openLogbook(path: string): Parsed<OpenedLogbook> {
  try {
    const { entries, problems } = readLogbookBytes(readFileSync(path === '-' ? 0 : path));
    return understood({ entries, remarks: problems.map((problem) => describeLogbookProblem(path, problem)) });
  } catch (error) {
    return refused(describeFileFailure(path, 'read', error));
  }
}
