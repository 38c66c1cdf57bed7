import { lineProblem } from '../../fleet/line-problem.js';
import { machineOf, type MachineRead } from '../../fleet/read-machine.js';
import { readCsv } from '../exchange/csv.js';
import type { TableColumn, TableHeading } from './table-heading.js';

/**
 * Machines from rows of a table; an empty cell is not known. `null` for an empty row.
 *
 * A row is one line, so that a quote that is never closed costs its own row and no other.
 */
export function csvMachines({ text, columns }: TableHeading, rows: string): readonly (MachineRead | null)[] {
  const heading = text.replace(/\r?\n$/, '');
  const machines: (MachineRead | null)[] = [];
  for (let rest = rows; rest !== '';) {
    const { rows: read, problem } = readCsv(`${heading}\n${rest}`);
    const whole = read.slice(1);
    const broken = whole.findIndex((cells) => cells.some((cell) => cell.includes('\n')));
    const good = broken < 0 ? whole : whole.slice(0, broken);
    for (const cells of good) machines.push(machineOfRow(columns, cells));
    const what = broken < 0 ? problem?.what : 'a quoted cell goes on into the next line';
    if (what === undefined) break;
    machines.push(wrongRow(what));
    rest = withoutLines(rest, good.length + 1);
  }
  return machines;
}

function withoutLines(text: string, count: number): string {
  let at = 0;
  for (let line = 0; line < count; line += 1) {
    const feed = text.indexOf('\n', at);
    if (feed < 0) return '';
    at = feed + 1;
  }
  return text.slice(at);
}

function machineOfRow(columns: readonly TableColumn[], cells: readonly string[]): MachineRead | null {
  if (cells.every((cell) => cell === '')) return null;
  const filled = cells.findLastIndex((cell) => cell.trim() !== '') + 1;
  if (filled > columns.length) return wrongRow(`there are ${filled} cells under ${columns.length} columns`);
  return machineOf(lineOf(columns, cells));
}

function wrongRow(what: string): MachineRead {
  const { code, help } = lineProblem('wrong-row', what);
  return { kind: 'problem', problem: what, code, help };
}

function lineOf(columns: readonly TableColumn[], cells: readonly string[]): object {
  const line = new Map<string, unknown>();
  const meters = new Map<string, unknown>();
  const done = new Map<string, { on?: string; meters: Map<string, unknown> }>();
  columns.forEach((column, i) => {
    const cell = cells[i]?.trim() ?? '';
    if (cell === '' || column.is === 'none') return;
    if (column.is === 'member') line.set(column.name, column.name === 'serial' ? numberOf(cell) : cell);
    else if (column.is === 'meter') meters.set(column.meter, numberOf(cell));
    else {
      const doing = done.get(column.task) ?? { meters: new Map<string, unknown>() };
      done.set(column.task, doing);
      if (column.is === 'done') doing.on = cell;
      else doing.meters.set(column.meter, numberOf(cell));
    }
  });
  const doings = [...done].map(
    ([task, doing]) => [task, { ...(doing.on === undefined ? {} : { on: doing.on }), meters: Object.fromEntries(doing.meters) }] as const,
  );
  return { ...Object.fromEntries(line), meters: Object.fromEntries(meters), done: Object.fromEntries(doings) };
}

/** Leaves what is no number as it is: the check then says what it should have been. */
function numberOf(cell: string): unknown {
  return /^-?\d+(\.\d+)?$/.test(cell) ? Number(cell) : cell;
}
