import { machineOf, type MachineRead } from '../../fleet/read-machine.js';
import { readCsv } from '../exchange/csv.js';

/** What a heading's column holds. */
type Column =
  | { readonly is: 'member'; readonly name: string }
  | { readonly is: 'meter'; readonly meter: string }
  | { readonly is: 'done'; readonly task: string }
  | { readonly is: 'done-meter'; readonly task: string; readonly meter: string }
  | { readonly is: 'none' };

/**
 * Machines from rows of a table whose heading is `machine,on,inService,serial,meters.METER,done.TASK,done.TASK.METER`, the last three
 * once for each meter and task; an empty cell is not known. `null` for an empty row.
 */
export function csvMachines(heading: string, rows: string): readonly (MachineRead | null)[] {
  const { rows: read, problem } = readCsv(`${heading.replace(/\r?\n$/, '')}\n${rows}`);
  const [names = [], ...body] = read;
  const columns = names.map(columnOf);
  const machines = body.map((cells) => (cells.every((cell) => cell === '') ? null : machineOf(lineOf(columns, cells))));
  return problem === null ? machines : [...machines, { kind: 'problem', problem: problem.what }];
}

function columnOf(name: string): Column {
  const [head = '', second, third] = name.trim().split('.');
  if (head === 'meters' && second !== undefined) return { is: 'meter', meter: second };
  if (head === 'done' && second !== undefined)
    return third === undefined ? { is: 'done', task: second } : { is: 'done-meter', task: second, meter: third };
  return name.trim() === '' ? { is: 'none' } : { is: 'member', name: name.trim() };
}

function lineOf(columns: readonly Column[], cells: readonly string[]): object {
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
