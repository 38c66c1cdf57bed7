/** Random histories of readings and work done, as entries for the engine and as rows for a database. */
import fc from 'fast-check';
import type { Entry } from '../../../src/history/entry.js';
import { formatDate } from '../../../src/values/civil.js';
import type { Day } from '../../../src/values/moment.js';
import { START } from '../../fleet/random-fleet.js';

/** One machine with all that was read and done. */
export interface MachineLog {
  readonly machine: string;
  readonly inService: string | null;
  readonly serial: number | null;
  readonly readings: readonly { readonly on: string; readonly meters: Readonly<Record<string, number>> }[];
  readonly done: readonly { readonly on: string; readonly tasks: readonly string[]; readonly meters: Readonly<Record<string, number>> }[];
}

const day = fc.integer({ min: 0, max: 300 });
const onDay = (n: number): string => formatDate((START + n) as Day);
const noted = fc.record({
  engine: fc.constantFrom('true', 'true', 'true', 'none'),
  shaft: fc.constantFrom('none', 'true'),
  odd: fc.integer({ min: 0, max: 60 }),
});

/** Where the meters truly stood; once in sixty a number that cannot be. */
function metersOn(n: number, { engine, shaft, odd }: { engine: string; shaft: string; odd: number }): Record<string, number> {
  return { ...(engine === 'none' ? {} : { engine: n * 1.5 + (odd === 0 ? 700 : 0) }), ...(shaft === 'none' ? {} : { shaft: n * 0.35 }) };
}

/** Up to six readings and eight doings. */
export const machineLog = (tasks: readonly string[]): fc.Arbitrary<MachineLog> =>
  fc
    .record({
      inService: fc.constantFrom(null, 0, 0, 40),
      serial: fc.constantFrom(null, 10, 70),
      readings: fc.array(fc.record({ day, noted }), { maxLength: 6 }),
      done: fc.array(fc.record({ day, noted, tasks: fc.uniqueArray(fc.constantFrom(...tasks), { minLength: 1, maxLength: 2 }) }), {
        maxLength: 8,
      }),
    })
    .map(({ inService, serial, readings, done }) => ({
      machine: '',
      inService: inService === null ? null : onDay(inService),
      serial,
      readings: readings.map((each) => ({ on: onDay(each.day), meters: metersOn(each.day, each.noted) })),
      done: done.map((each) => ({ on: onDay(each.day), tasks: each.tasks, meters: metersOn(each.day, each.noted) })),
    }));

/** The history for the engine. */
export function entriesOf({ inService, serial, readings, done }: MachineLog): readonly Entry[] {
  return [
    {
      kind: 'machine',
      id: 'machine',
      on: '2000-01-01',
      ...(inService === null ? {} : { inService }),
      ...(serial === null ? {} : { serial }),
    },
    ...readings.map(({ on, meters }, i): Entry => ({ kind: 'reading', id: `r${i}`, on, meters: { ...meters } })),
    ...done.map(({ on, tasks, meters }, i): Entry => ({ kind: 'done', id: entryId(i), on, tasks: [...tasks], meters: { ...meters } })),
  ];
}

function entryId(i: number): string {
  return `d${String(i).padStart(4, '0')}`;
}

/** The same as the text of CSV files, one for each table. */
export function rowsOf(
  logs: readonly MachineLog[],
  meters: readonly string[],
): { readonly machines: string; readonly readings: string; readonly work: string } {
  const row = (...cells: readonly (string | number | null | undefined)[]): string => cells.map((cell) => cell ?? '').join(',');
  const machines = logs.map(({ machine, inService, serial }) => row(machine, inService, serial));
  const readings = logs.flatMap((log) =>
    log.readings.flatMap(({ on, meters: shown }) => Object.entries(shown).map(([meter, value]) => row(log.machine, meter, on, value))),
  );
  const work = logs.flatMap((log) =>
    log.done.flatMap(({ on, tasks, meters: shown }, i) =>
      tasks.map((task) => row(log.machine, entryId(i), task, on, ...meters.map((meter) => shown[meter]))),
    ),
  );
  const text = (rows: readonly string[]): string => rows.map((each) => `${each}\n`).join('');
  return { machines: text(machines), readings: text(readings), work: text(work) };
}
