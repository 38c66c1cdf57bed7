/**
 * The edge of the history: what comes in as JSON becomes entries, or a list of what is wrong with it. Nothing is thrown.
 */
import { knownMembers } from '../base/known-members.js';
import { type Misfit, misfits } from '../base/misfits.js';
import { type Entry, entryShape } from './entry.js';

/** One thing that is wrong with an entry. */
export interface EntryProblem {
  /** Where, as in `meters.engine`; empty for the entry as a whole. */
  readonly path: string;
  /** What should stand there, as a sentence without a full stop. */
  readonly message: string;
}

/** An entry, or what is wrong with the value that should be one. */
export type ValidatedEntry =
  { readonly kind: 'entry'; readonly entry: Entry } | { readonly kind: 'problems'; readonly problems: readonly EntryProblem[] };

/** Most values (members and items, at any depth) that one entry may hold, and how deep. The schema allows no entry deeper than this. */
const MOST_VALUES = 2000;
const DEEPEST = 4;

/**
 * Checks one value against the schema of entries (`grammar/history-entry.schema.json`). Members that the schema does not know are left out.
 *
 * @example validateEntry({ kind: 'reading', id: 'r', on: '2026-02-30' })
 *   // { kind: 'problems', problems: [{ path: 'on', message: 'a day that exists, as YYYY-MM-DD' }] }
 */
export function validateEntry(value: unknown): ValidatedEntry {
  const size = sizeProblem(value);
  if (size !== null) return { kind: 'problems', problems: [size] };
  const found = misfits(value, entryShape);
  // What fits the shape is of its type.
  if (found.length === 0) return { kind: 'entry', entry: knownMembers(value, entryShape) as Entry };
  return { kind: 'problems', problems: found.map(problemOf) };
}

/** Bounds the work before the shape is looked at, and finds the one name that it would pass over in silence. */
function sizeProblem(value: unknown): EntryProblem | null {
  const walk = { values: 0, path: [] as string[] };
  const message = tooMuch(value, 0, walk);
  return message === null ? null : { path: walk.path.join('.'), message };
}

/** What is wrong, and in `path` where: it is left as it stood when that was found. */
function tooMuch(value: unknown, depth: number, walk: { values: number; path: string[] }): string | null {
  if (typeof value !== 'object' || value === null) return null;
  if (depth > DEEPEST) return `at most ${DEEPEST} levels deep`;
  for (const key of Object.keys(value)) {
    walk.values += 1;
    if (walk.values > MOST_VALUES) {
      walk.path = [];
      return `at most ${MOST_VALUES} values`;
    }
    const member = (value as Readonly<Record<string, unknown>>)[key];
    const isPlain = key !== '__proto__' && (typeof member !== 'object' || member === null);
    if (isPlain) continue;
    walk.path.push(key);
    const message = key === '__proto__' ? 'a name other than `__proto__`' : tooMuch(member, depth + 1, walk);
    if (message !== null) return message;
    walk.path.pop();
  }
  return null;
}

function problemOf({ path, wanted, missing }: Misfit): EntryProblem {
  if (path.length === 0) return { path: '', message: 'a JSON object' };
  return { path: path.join('.'), message: missing ? `missing: ${wanted}` : wanted };
}
