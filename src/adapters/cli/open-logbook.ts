import { readFileSync } from 'node:fs';
import type { Entry } from '../../engine.js';
import { describeLogbookProblem } from './describe-logbook-problem.js';
import type { LogbookLine } from '../logbook/logbook.js';
import { readLogbookBytes } from '../logbook/read-logbook.js';
import { describeFileFailure } from './describe-file-failure.js';
import { type Parsed, refused, understood } from './parsed.js';

/** The entries of a logbook that can be used, and one sentence for everything in it that cannot, with its line. */
export interface OpenedLogbook {
  readonly entries: readonly Entry[];
  readonly lines: readonly LogbookLine[];
  readonly remarks: readonly string[];
}

/** Bytes of a file in which it shows what it is. */
const LOOKED_AT = 4096;

/** The text of a schedule, after its comments, or a compiled one. */
function isSchedule(text: string): boolean {
  return /^\uFEFF?(?:\s|#[^\r\n]*)*(?:(?:schedule|variant|part)\s|\{\s*"format"\s*:\s*"duewright-rule-graph")/.test(text);
}

const HOW_TO_BEGIN =
  ' A logbook begins with its first entry: `duewright record`, or `duewright takeover` for a machine that came without records.';

function isMissing(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'ENOENT';
}

/** Reads a logbook; `-` is the standard input. Broken lines are remarked upon and the rest is used. */
export function openLogbook(path: string): Parsed<OpenedLogbook> {
  try {
    const bytes = readFileSync(path === '-' ? 0 : path);
    if (isSchedule(bytes.subarray(0, LOOKED_AT).toString('utf8')))
      return refused(`${path} is a schedule, where a logbook belongs: a file that holds one JSON entry a line.`);
    const { entries, lines, problems } = readLogbookBytes(bytes);
    return understood({ entries, lines, remarks: problems.map((problem) => describeLogbookProblem(path, problem)) });
  } catch (error) {
    return refused(`${describeFileFailure(path, 'read', error)}${isMissing(error) ? HOW_TO_BEGIN : ''}`);
  }
}
