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

/** Bounds the work before the schema looks closer, and finds the one name that it would pass over in silence. */
function sizeProblem(value: unknown): EntryProblem | null {
  let values = 0;
  const walk = (item: unknown, path: string, depth: number): EntryProblem | null => {
    if (typeof item !== 'object' || item === null) return null;
    if (depth > DEEPEST) return { path, message: `at most ${DEEPEST} levels deep` };
    for (const [key, member] of Object.entries(item)) {
      values += 1;
      const inside = path === '' ? key : `${path}.${key}`;
      if (values > MOST_VALUES) return { path: '', message: `at most ${MOST_VALUES} values` };
      if (key === '__proto__') return { path: inside, message: 'a name other than `__proto__`' };
      const problem = walk(member, inside, depth + 1);
      if (problem !== null) return problem;
    }
    return null;
  };
  return walk(value, '', 0);
}

function problemOf({ path, wanted, missing }: Misfit): EntryProblem {
  if (path.length === 0) return { path: '', message: 'a JSON object' };
  return { path: path.join('.'), message: missing ? `missing: ${wanted}` : wanted };
}
