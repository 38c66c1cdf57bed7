/**
 * The edge of the history: what comes in as JSON becomes entries, or a list of what is wrong with it. Nothing is thrown.
 */
import { entrySchema } from './entry.js';
import type { Entry } from './entry.js';

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

type Issue = NonNullable<ReturnType<typeof entrySchema.safeParse>['error']>['issues'][number];

/**
 * Checks one value against the schema of entries (`grammar/history-entry.schema.json`). Members that the schema does not know are left out.
 *
 * @example validateEntry({ kind: 'reading', id: 'r', on: '2026-02-30' })
 *   // { kind: 'problems', problems: [{ path: 'on', message: 'a day that exists, as YYYY-MM-DD' }] }
 */
export function validateEntry(value: unknown): ValidatedEntry {
  const size = sizeProblem(value);
  if (size !== null) return { kind: 'problems', problems: [size] };
  const parsed = entrySchema.safeParse(value);
  if (parsed.success) return { kind: 'entry', entry: parsed.data };
  return { kind: 'problems', problems: parsed.error.issues.flatMap((issue) => problemsOf(issue, value)) };
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

function problemsOf(issue: Issue, value: unknown): readonly EntryProblem[] {
  const path = issue.path.map(String).join('.');
  if (issue.code === 'invalid_union' && path === 'kind') return [{ path, message: `one of ${kinds().join(', ')}` }];
  return [{ path, message: at(value, issue.path) === undefined ? `missing: ${wanted(issue, path)}` : wanted(issue, path) }];
}

/** What should have been there, from what was asked for. */
function wanted(issue: Issue, path: string): string {
  switch (issue.code) {
    case 'invalid_type':
      return path === '' ? 'a JSON object' : aTypeNamed(issue.expected);
    case 'invalid_value':
      return `one of ${issue.values.map(String).join(', ')}`;
    case 'invalid_format':
      return wantedFormat(path);
    case 'too_small':
      return issue.origin === 'number' || issue.origin === 'int' ? `at least ${String(issue.minimum)}` : 'not empty';
    case 'too_big':
      return issue.origin === 'string' ? `at most ${String(issue.maximum)} characters` : `at most ${String(issue.maximum)}`;
    case 'invalid_key':
      return 'a name of 1 to 160 characters';
    case 'invalid_union':
      return 'a number, or one of below-low, low, full, above-full';
    default:
      return 'a value of another kind';
  }
}

function aTypeNamed(expected: string): string {
  const names = new Map([
    ['int', 'a whole number'],
    ['record', 'an object with a value for each name'],
    ['object', 'an object'],
    ['array', 'a list'],
  ]);
  return names.get(expected) ?? `a ${expected}`;
}

function wantedFormat(path: string): string {
  const member = path.split('.').at(-1) ?? '';
  if (['on', 'untilOn', 'inService', 'doneBy'].includes(member)) return 'a day that exists, as YYYY-MM-DD';
  if (['at', 'until'].includes(member)) return 'a time from 00:00 to 23:59, as HH:MM';
  return 'a name other than `__proto__`';
}

function kinds(): readonly string[] {
  return entrySchema.def.options.flatMap((option) => [...option.def.shape.kind.def.values].map(String));
}

function at(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (inside, key) => (typeof inside === 'object' && inside !== null ? Reflect.get(inside, key) : undefined),
    value,
  );
}
