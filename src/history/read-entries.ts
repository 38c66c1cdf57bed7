import type { Entry } from './entry.js';
import { validateEntry } from './validate-entry.js';
import type { EntryProblem, ValidatedEntry } from './validate-entry.js';

/** A line that is no entry; the others are used all the same. */
export interface BrokenLine {
  /** Counted from 1. */
  readonly line: number;
  readonly problems: readonly EntryProblem[];
}

/** The entries of a text, and the lines that are none. */
export interface EntriesRead {
  readonly entries: readonly Entry[];
  readonly broken: readonly BrokenLine[];
}

/** Longest line, in UTF-16 code units. */
const LONGEST_LINE = 200_000;

/** Reads entries that are written one JSON object a line; blank lines mean nothing. */
export function readEntries(text: string): EntriesRead {
  const entries: Entry[] = [];
  const broken: BrokenLine[] = [];
  text
    .replace(/^\uFEFF/, '')
    .split('\n')
    .forEach((line, index) => {
      if (line.trim() === '') return;
      const read = readLine(line);
      if (read.kind === 'entry') entries.push(read.entry);
      else broken.push({ line: index + 1, problems: read.problems });
    });
  return { entries, broken };
}

function readLine(line: string): ValidatedEntry {
  if (line.length > LONGEST_LINE) return { kind: 'problems', problems: [{ path: '', message: `at most ${LONGEST_LINE} characters` }] };
  let value: unknown;
  try {
    value = JSON.parse(line);
  } catch {
    return { kind: 'problems', problems: [{ path: '', message: 'one JSON object on a line' }] };
  }
  return validateEntry(value);
}
