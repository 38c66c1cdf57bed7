import { nearNames, type Patience, patience } from '../../base/near-name.js';
import type { ColumnPlan } from '../../fleet/column-plan.js';
import { lineProblem } from '../../fleet/line-problem.js';
import { readCsv } from '../exchange/csv.js';
import { type LineNote, noteOf } from './line-note.js';

/** What a column of a table holds. */
export type TableColumn =
  | { readonly is: 'member'; readonly name: string }
  | { readonly is: 'meter'; readonly meter: string }
  | { readonly is: 'done'; readonly task: string }
  | { readonly is: 'done-meter'; readonly task: string; readonly meter: string }
  /** Of no use here; the heading says why. */
  | { readonly is: 'none' };

/** The heading of a table, read once; `usable` unless no machine could be found in it. */
export interface TableHeading {
  readonly text: string;
  readonly columns: readonly TableColumn[];
  readonly notes: readonly LineNote[];
  readonly usable: boolean;
}

const MEMBERS = ['machine', 'model', 'serial', 'inService', 'on'];

/**
 * Reads `machine,model,on,inService,serial,meters.METER,done.TASK,done.TASK.METER`, the last three once for each meter and task.
 *
 * What is wrong with a column is said here, once, and not again for each row.
 */
export function readHeading(text: string, plan: ColumnPlan): TableHeading {
  const { rows, problem } = readCsv(text.replace(/\r?\n$/, ''));
  const names = (rows[0] ?? []).map((name) => name.trim());
  const wrong = problem?.what ?? headingProblem(names);
  if (wrong !== null) return { text, columns: [], notes: [noteOf(1, lineProblem('wrong-heading', wrong), true)], usable: false };
  const shared = patience();
  const read = names.map((name) => columnOf(name, plan, shared));
  const notes = read.flatMap(({ stray }) => (stray === null ? [] : [noteOf(1, lineProblem('unknown-name', stray), false)]));
  return { text, columns: read.map(({ column }) => column), notes, usable: true };
}

function headingProblem(names: readonly string[]): string | null {
  if (!names.includes('machine')) return 'there is no column `machine`';
  const seen = new Set<string>();
  const twice = names.find((name) => name !== '' && (seen.has(name) || !seen.add(name)));
  return twice === undefined ? null : `there are two columns \`${twice.slice(0, 80)}\``;
}

interface ReadColumn {
  readonly column: TableColumn;
  /** Why it is not used, as a sentence without a full stop. */
  readonly stray: string | null;
}

function columnOf(name: string, plan: ColumnPlan, shared: Patience): ReadColumn {
  const [head = '', second = '', third] = name.split('.');
  const meters = plan.meters.map(({ id }) => id);
  const tasks = plan.tasks.map(({ id }) => id);
  if (name === '') return { column: { is: 'none' }, stray: null };
  if (MEMBERS.includes(name)) return { column: { is: 'member', name }, stray: null };
  if (head === 'meters') return known(name, 'meter', second, meters, { is: 'meter', meter: second }, shared);
  if (head !== 'done') return unknown(name, nearNames(name, MEMBERS, shared));
  const done = known(name, 'task', second, tasks, { is: 'done', task: second }, shared);
  if (done.stray !== null || third === undefined) return done;
  return known(name, 'meter', third, meters, { is: 'done-meter', task: second, meter: third }, shared);
}

function known(name: string, kind: string, id: string, ids: readonly string[], column: TableColumn, shared: Patience): ReadColumn {
  if (ids.includes(id)) return { column, stray: null };
  const near = nearNames(id, ids, shared);
  return unknown(name, near, `: there is no ${kind} \`${id.slice(0, 80)}\` in this schedule${kind === 'meter' ? ' that is read' : ''}`);
}

function unknown(name: string, near: readonly string[], why = ''): ReadColumn {
  const meant = near.length === 0 ? '' : `; was ${near.map((each) => `\`${each}\``).join(' or ')} meant?`;
  return { column: { is: 'none' }, stray: `the column \`${name.slice(0, 80)}\` is not used${why}${meant}` };
}
