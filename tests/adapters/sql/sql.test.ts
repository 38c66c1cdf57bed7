import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toSql } from '../../../src/sql/to-sql.js';
import type { Day } from '../../../src/values/moment.js';
import { intervalSchedule, START } from '../../fleet/random-fleet.js';
import { compileText } from '../../support/compile-text.js';
import { expectedRows, expectSame } from './compare.js';
import { rowsInDuckdb } from './in-duckdb.js';
import { machineLog } from './random-log.js';

const tractor = `meter engine "Hour meter" counts h
meter bales "Bale counter" counts bales
gauge coolant "Coolant" reads °C normal 75 to 90 high above 97
task oil "Change the oil" first at 50 h of engine every 100 h of engine or 12 months, whichever first allow 10 h late hold when overdue "Stop."
task look "Look" before each day's work
task twine "It's the \\"twine\\" arm" every 500 bales of bales
task hot "Radiator" when coolant above normal
`;

describe('the view', () => {
  test('says what the engine says', { timeout: 60_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(
        intervalSchedule,
        fc.array(machineLog(['alpha', 'beta', 'gamma', 'delta']), { minLength: 50, maxLength: 60 }),
        fc.integer({ min: START + 150, max: START + 420 }).map((each) => each as Day),
        async ({ graph }, unnamed, today) => {
          const logs = unnamed.map((log, i) => ({ ...log, machine: `m-${String(i).padStart(3, '0')}` }));
          const rows = await rowsInDuckdb(toSql(graph, 'duckdb'), ['engine', 'shaft'], logs, today);
          expectSame(
            rows,
            logs.flatMap((log) => expectedRows(graph, log, today)),
          );
        },
      ),
      { numRuns: 8 },
    );
  });

  test('leaves out what SQL cannot say, and names it', () => {
    expect(toSql(compileText(tractor), 'duckdb').refused).toMatchObject([
      { task: 'look', because: "before each day's work" },
      { task: 'hot', because: 'when coolant above normal' },
    ]);
    const lines = tractor.split('\n').flatMap((text, i) => (/^task (look|hot)/.test(text) ? [i] : []));
    const [first = 0, second = 0] = toSql(compileText(tractor), 'duckdb').refused.map(({ at }) => at.line);
    expect(second - first).toBe((lines[1] ?? 0) - (lines[0] ?? 0));
  });

  test('of a schedule with nothing that SQL can say is empty, and is a view all the same', async () => {
    const sql = toSql(compileText('task look "Look" before each day\'s work'), 'duckdb');
    const log = { machine: 'a', inService: null, serial: null, readings: [], done: [] };
    expect(await rowsInDuckdb(sql, [], [log], START as Day)).toEqual([]);
  });

  test.each(['duckdb', 'postgresql'] as const)('is written for %s as it was', async (dialect) => {
    const { tables, view } = toSql(compileText(tractor), dialect);
    await expect(`${tables}\n${view}`).toMatchFileSnapshot(`../../cases/sql/tractor.${dialect}.sql`);
  });
});
