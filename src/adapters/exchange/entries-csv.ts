/**
 * Logbook entries as a table, out and in: one row an entry, one column a member; members by name have a column a name
 * (`meters.engine`, `readings.coolant`, `used.oil-filter`).
 */
import { validateEntry } from '../../engine.js';
import { entryProblemWords } from '../logbook/entry-problem-words.js';
import type { Entry } from '../../engine.js';
import { sha256 as ours, type WithDigest } from '../../base/sha256.js';
import { readCsv, writeCsv } from './csv.js';

const FIRST = ['on', 'at', 'kind', 'tasks', 'text'];
const LAST = ['by', 'note', 'id'];
/** Without these no row is an entry. */
const NEEDED = ['on', 'kind'];
const LISTS: ReadonlySet<string> = new Set(['tasks', 'attachments', 'duties']);
const BY_NAME: ReadonlySet<string> = new Set(['meters', 'readings', 'used', 'positions', 'doneAt']);
const NUMBERS: ReadonlySet<string> = new Set([
  'meters',
  'readings',
  'used',
  'doneAt',
  'minutes',
  'hours',
  'litres',
  'final',
  'initial',
  'serial',
]);

/** Rows that became entries, and those that did not, with the reason. Rows count from 1, the heading included. */
export interface EntriesFromCsv {
  readonly entries: readonly Entry[];
  readonly problems: readonly { readonly row: number; readonly what: string }[];
}

/** All entries as CSV that a spreadsheet opens as UTF-8 and in which nothing runs as a formula; {@link entriesFromCsv} reads it back. */
export function entriesToCsv(entries: readonly Entry[]): string {
  const rows = entries.map(flatten);
  const found = [...new Set(rows.flatMap((row) => [...row.keys()]))];
  const middle = found.filter((column) => !FIRST.includes(column) && !LAST.includes(column)).sort();
  const columns = [...FIRST.filter((column) => found.includes(column)), ...middle, ...LAST.filter((column) => found.includes(column))];
  return writeCsv([columns, ...rows.map((row) => columns.map((column) => row.get(column) ?? ''))], { mark: true });
}

/**
 * Reads entries from a table with a heading row. A row without `id` gets one from its content, so that importing the same table
 * again adds nothing. In a table with semicolons, numbers may have a decimal comma.
 */
export function entriesFromCsv(text: string, { sha256 = ours }: WithDigest = {}): EntriesFromCsv {
  const { rows, separator, problem } = readCsv(text);
  const [heading = [], ...body] = rows;
  const entries: Entry[] = [];
  const missing = NEEDED.filter((column) => !heading.some((each) => each.trim() === column));
  if (body.length > 0 && missing.length > 0) return { entries: [], problems: [{ row: 1, what: headingWanted(missing) }] };
  const problems: { row: number; what: string }[] = [];
  const columns = columnsOf(heading);
  const ids = new Map<string, number>();
  body.forEach((cells, index) => {
    if (cells.every((cell) => cell.trim() === '')) return;
    const candidate = unflatten(columns, cells, separator === ';');
    candidate['id'] ??= contentId(sha256(JSON.stringify(candidate)), ids);
    const read = validateEntry(candidate);
    if (read.kind === 'entry') entries.push(read.entry);
    else problems.push({ row: index + 2, what: entryProblemWords(read.problems) });
  });
  return { entries, problems: problem === null ? problems : [...problems, problem] };
}

function headingWanted(missing: readonly string[]): string {
  const columns = missing.map((column) => `\`${column}\``).join(' and ');
  return `the heading names no ${columns}; it has to name what entries have, such as \`on\`, \`kind\`, \`tasks\`, \`meters.engine\`, \`note\``;
}

function flatten(entry: Entry): ReadonlyMap<string, string> {
  const row = new Map<string, string>();
  for (const [member, value] of Object.entries<unknown>({ ...entry })) {
    if (value === undefined) continue;
    if (BY_NAME.has(member))
      for (const [name, each] of Object.entries<unknown>({ ...(value as object) })) row.set(`${member}.${name}`, String(each));
    else if (Array.isArray(value)) row.set(member, listText(value as readonly Item[]));
    else row.set(member, typeof value === 'string' ? value : JSON.stringify(value));
  }
  return row;
}

type Item = string | { readonly duty: string; readonly hours?: number | undefined };

/** `a; b`, and `dusty=2.5; tall-growth` for duties with their hours; as JSON where a name itself has such a sign. */
function listText(list: readonly Item[]): string {
  const items = list.map((item) => (typeof item === 'string' ? item : item.hours === undefined ? item.duty : `${item.duty}=${item.hours}`));
  const names = list.map((item) => (typeof item === 'string' ? item : item.duty));
  const plain = list.length > 0 && names.every((name) => name === name.trim() && !/^\[|[;=]/.test(name));
  return plain ? items.join('; ') : JSON.stringify(list);
}

/** A column of the table: the member of an entry that it holds, or what it holds of a member by name. */
interface Column {
  readonly index: number;
  readonly member: string;
  readonly name: string | null;
  readonly read: (cell: string, decimalComma: boolean) => unknown;
}

function columnsOf(heading: readonly string[]): readonly Column[] {
  return heading.flatMap((column, index) => {
    const dot = column.indexOf('.');
    const member = (dot < 0 ? column : column.slice(0, dot)).trim();
    if (member === '' || member === '__proto__') return [];
    const name = dot < 0 || !BY_NAME.has(member) ? null : column.slice(dot + 1);
    return [{ index, member, name, read: readerOf(member) }];
  });
}

function readerOf(member: string): Column['read'] {
  if (LISTS.has(member)) return (cell) => listOf(cell, member);
  return NUMBERS.has(member) ? numberOf : (cell) => cell;
}

function unflatten(columns: readonly Column[], cells: readonly string[], decimalComma: boolean): Record<string, unknown> {
  const candidate: Record<string, unknown> = {};
  const groups = new Map<string, Map<string, unknown>>();
  for (const { index, member, name, read } of columns) {
    const cell = cells[index] ?? '';
    if (cell === '') continue;
    const value = read(cell, decimalComma);
    if (name === null) candidate[member] = value;
    else groups.set(member, (groups.get(member) ?? new Map<string, unknown>()).set(name, value));
  }
  for (const [member, values] of groups) candidate[member] = Object.fromEntries(values);
  return candidate;
}

function listOf(cell: string, member: string): unknown {
  if (cell.startsWith('[')) {
    try {
      return JSON.parse(cell);
    } catch {
      return cell;
    }
  }
  const items = cell.split(';').map((item) => item.trim());
  return member === 'duties' ? items.map(dutyOf) : items;
}

function dutyOf(item: string): object {
  const [duty = '', hours] = item.split('=');
  return hours === undefined ? { duty } : { duty, hours: Number(hours) };
}

/** Leaves what is no number as it is: the schema then says what it should have been. */
function numberOf(cell: string, decimalComma: boolean): unknown {
  const text = decimalComma ? cell.trim().replace(',', '.') : cell.trim();
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text) ? Number(text) : cell;
}

function contentId(hash: string, ids: Map<string, number>): string {
  const base = `table-${hash.slice(0, 12)}`;
  const count = (ids.get(base) ?? 0) + 1;
  ids.set(base, count);
  return count === 1 ? base : `${base}-${count}`;
}
