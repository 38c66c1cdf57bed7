import { readFileSync } from 'node:fs';
import { describeFileFailure } from './describe-file-failure.js';
import { type Parsed, refused, understood } from './parsed.js';

/** Reads a file as UTF-8; `-` is the standard input. A byte order mark at its beginning is dropped. */
export function readText(path: string): Parsed<string> {
  try {
    const bytes = readFileSync(path === '-' ? 0 : path);
    return understood(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch (error) {
    return refused(describeFileFailure(path, 'read', error));
  }
}
