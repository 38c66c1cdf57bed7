import { validateEntry } from '../history/validate-entry.js';
import type { Entry } from '../history/entry.js';
import { entriesOfLine, type MachineLine, type MachineLogbook } from './machine-line.js';

/** What a line of a fleet came to. */
export type MachineRead =
  | { readonly kind: 'line'; readonly line: MachineLine }
  | { readonly kind: 'logbook'; readonly logbook: MachineLogbook }
  | { readonly kind: 'problem'; readonly problem: string };

/** Most entries that one machine may bring. */
const MOST_ENTRIES = 100_000;
const MEMBERS: ReadonlySet<string> = new Set(['machine', 'on', 'inService', 'serial', 'meters', 'done', 'entries']);

/**
 * One machine from a line of JSON, the long way: every value is checked as an entry of a logbook would be. Total: what is no such
 * line is a problem, said in a sentence.
 */
export function readMachine(text: string): MachineRead {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return problem('it is not one JSON object');
  }
  return machineOf(value);
}

/** As {@link readMachine}, for a value that was parsed already. */
export function machineOf(value: unknown): MachineRead {
  if (!isObject(value)) return problem('it is not one JSON object');
  const { machine } = value;
  if (typeof machine !== 'string' || machine === '' || machine.length > 200)
    return problem('`machine` is not a name of 1 to 200 characters');
  const odd = Object.keys(value).find((key) => !MEMBERS.has(key));
  if (odd !== undefined) return problem(`there is no member \`${odd.slice(0, 80)}\``);
  if ('entries' in value) return logbookOf(machine, value);
  const shape = shapeProblem(value);
  return shape === null ? lineOf(value as unknown as MachineLine) : problem(shape);
}

function logbookOf(machine: string, value: Readonly<Record<string, unknown>>): MachineRead {
  const { entries } = value;
  if (Object.keys(value).length > 2) return problem('beside `entries` nothing but `machine` can stand');
  if (!Array.isArray(entries) || entries.length > MOST_ENTRIES)
    return problem(`\`entries\` is not a list of at most ${MOST_ENTRIES} entries`);
  const valid: Entry[] = [];
  for (const [at, each] of (entries as readonly unknown[]).entries()) {
    const read = validateEntry(each);
    if (read.kind === 'problems') return problem(`\`entries.${at}\` is no entry: ${firstOf(read.problems)}`);
    valid.push(read.entry);
  }
  return { kind: 'logbook', logbook: { machine, entries: valid } };
}

/** What has to hold before the line can be turned into entries at all. */
function shapeProblem({ on, meters, done }: Readonly<Record<string, unknown>>): string | null {
  if (meters !== undefined && !isObject(meters)) return '`meters` is not an object with a value for each meter';
  if (meters !== undefined && Object.keys(meters).length > 0 && on === undefined)
    return '`on`, the day on which the meters were read, is missing';
  if (done === undefined) return null;
  if (!isObject(done)) return '`done` is not an object with a doing for each task';
  const odd = Object.entries(done).find(
    ([, doing]) => !isObject(doing) || Object.keys(doing).some((key) => key !== 'on' && key !== 'meters'),
  );
  return odd === undefined ? null : `\`done.${odd[0].slice(0, 80)}\` is not an object with \`on\` and perhaps \`meters\``;
}

function lineOf(line: MachineLine): MachineRead {
  for (const day of [line.on, line.inService]) if (day !== undefined && typeof day !== 'string') return problem('a day is not a text');
  for (const entry of entriesOfLine(line)) {
    const read = validateEntry(entry);
    if (read.kind === 'problems') return problem(`\`${entry.id}\`: ${firstOf(read.problems)}`);
  }
  return { kind: 'line', line };
}

function firstOf(problems: readonly { readonly path: string; readonly message: string }[]): string {
  const [first] = problems;
  return first === undefined ? 'something is wrong with it' : `${first.path === '' ? 'the whole' : first.path} should be ${first.message}`;
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function problem(what: string): MachineRead {
  return { kind: 'problem', problem: what };
}
