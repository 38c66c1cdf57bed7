import type { Entry } from '../history/entry.js';
import { validateEntry } from '../history/validate-entry.js';
import { dayOf } from '../values/civil.js';
import { type LineCode, lineProblem } from './line-problem.js';
import { entriesOfLine, type MachineLine, type MachineLogbook } from './machine-line.js';

/** What a line of a fleet came to. */
export type MachineRead =
  | { readonly kind: 'line'; readonly line: MachineLine }
  | { readonly kind: 'logbook'; readonly logbook: MachineLogbook }
  | { readonly kind: 'problem'; readonly problem: string; readonly code: LineCode; readonly help: string };

/** Most entries that one machine may bring. */
const MOST_ENTRIES = 100_000;
const MEMBERS: ReadonlySet<string> = new Set(['machine', 'model', 'on', 'inService', 'serial', 'meters', 'done', 'entries']);

/**
 * One machine from a line of JSON, the long way: every value is checked as an entry of a logbook would be. Total: what is no such
 * line is a problem, said in a sentence.
 */
export function readMachine(text: string): MachineRead {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return problem('not-an-object', 'it is not one JSON object');
  }
  return machineOf(value);
}

/** As {@link readMachine}, for a value that was parsed already. */
export function machineOf(value: unknown): MachineRead {
  if (!isObject(value)) return problem('not-an-object', 'it is not one JSON object');
  const { machine } = value;
  if (typeof machine !== 'string' || machine === '' || machine.length > 200)
    return problem('no-name', '`machine` is not a name of 1 to 200 characters');
  const odd = Object.keys(value).find((key) => !MEMBERS.has(key));
  if (odd !== undefined) return problem('unknown-member', `there is no member \`${odd.slice(0, 80)}\``);
  if ('entries' in value) return logbookOf(machine, value);
  if (value['on'] === undefined && isObject(value['meters']) && Object.keys(value['meters']).length > 0)
    return problem('no-day', '`on`, the day on which the meters were read, is missing');
  const shape = shapeProblem(value) ?? dayProblem(value as unknown as MachineLine);
  return shape === null ? lineOf(value as unknown as MachineLine) : problem('wrong-value', shape);
}

function logbookOf(machine: string, value: Readonly<Record<string, unknown>>): MachineRead {
  const { entries } = value;
  if (Object.keys(value).length > 2) return problem('unknown-member', 'beside `entries` nothing but `machine` can stand');
  if (!Array.isArray(entries) || entries.length > MOST_ENTRIES)
    return problem('wrong-value', `\`entries\` is not a list of at most ${MOST_ENTRIES} entries`);
  const valid: Entry[] = [];
  for (const [at, each] of (entries as readonly unknown[]).entries()) {
    const read = validateEntry(each);
    if (read.kind === 'problems') return problem('wrong-value', `\`entries.${at}\` is no entry: ${firstOf('', read.problems)}`);
    valid.push(read.entry);
  }
  return { kind: 'logbook', logbook: { machine, entries: valid } };
}

/** What has to hold before the line can be turned into entries at all. */
function shapeProblem({ meters, done }: Readonly<Record<string, unknown>>): string | null {
  if (meters !== undefined && !isObject(meters)) return '`meters` is not an object with a value for each meter';
  if (done === undefined) return null;
  if (!isObject(done)) return '`done` is not an object with a doing for each task';
  const odd = Object.entries(done).find(
    ([, doing]) => !isObject(doing) || Object.keys(doing).some((key) => key !== 'on' && key !== 'meters'),
  );
  return odd === undefined ? null : `\`done.${odd[0].slice(0, 80)}\` is not an object with \`on\` and perhaps \`meters\``;
}

/** Days are looked at under the names that they have in the line, before entries are made of them. */
function dayProblem({ on, inService, done }: MachineLine): string | null {
  const doings = Object.entries(done ?? {}).map(([task, doing]) => [`done.${task.slice(0, 80)}.on`, doing.on] as const);
  const days = [['on', on], ['inService', inService], ...doings] as const;
  const odd = days.find(([name, day]) => (day === undefined ? name.startsWith('done.') : typeof day !== 'string' || dayOf(day) === null));
  return odd === undefined ? null : `\`${odd[0]}\` should be a day that exists, as YYYY-MM-DD`;
}

function lineOf(line: MachineLine): MachineRead {
  for (const entry of entriesOfLine(line)) {
    const read = validateEntry(entry);
    const above = entry.id.startsWith('done:') ? `done.${entry.id.slice('done:'.length)}.` : '';
    if (read.kind === 'problems') return problem('wrong-value', firstOf(above, read.problems));
  }
  return { kind: 'line', line };
}

/** `above`: what stands before the path within the line. */
function firstOf(above: string, problems: readonly { readonly path: string; readonly message: string }[]): string {
  const [first] = problems;
  if (first === undefined) return 'something is wrong with it';
  const path = `${above}${first.path}`;
  return `${path === '' ? 'the whole' : `\`${path.slice(0, 200)}\``} should be ${first.message}`;
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function problem(code: LineCode, what: string): MachineRead {
  return { kind: 'problem', problem: what, code, help: lineProblem(code, what).help };
}
