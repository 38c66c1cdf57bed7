import { readFileSync } from 'node:fs';
import { type Parsed, refused, understood } from './parsed.js';

const causes: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EACCES: 'it may not be read',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of its path is not a folder',
  ELOOP: 'its links go round in a circle',
};

/** Reads a file as UTF-8; `-` is the standard input. A byte order mark at its beginning is dropped. */
export function readText(path: string): Parsed<string> {
  try {
    const bytes = readFileSync(path === '-' ? 0 : path);
    return understood(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch (error) {
    return refused(describeReadFailure(path, error));
  }
}

/** Why a file could not be read, in one sentence. */
export function describeReadFailure(path: string, error: unknown): string {
  return `\`${path}\` cannot be read: ${causeOf(error)}.`;
}

function causeOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (code === 'ERR_ENCODING_INVALID_ENCODED_DATA') return 'it is not a UTF-8 text';
  return causes[code] ?? (error instanceof Error ? error.message : 'the reason is not known');
}
