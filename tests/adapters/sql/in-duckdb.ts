/** A DuckDB in memory with the tables of a schedule filled, and the rows of its view. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import type { ScheduleSql } from '../../../src/sql/to-sql.js';
import { formatDate } from '../../../src/values/civil.js';
import type { Day } from '../../../src/values/moment.js';
import type { DueRow } from './compare.js';
import { type MachineLog, rowsOf } from './random-log.js';

export async function rowsInDuckdb(
  sql: ScheduleSql,
  meters: readonly string[],
  logs: readonly MachineLog[],
  today: Day,
): Promise<readonly DueRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'due-sql-'));
  const instance = await DuckDBInstance.create(':memory:');
  const connection = await instance.connect();
  try {
    await connection.run(sql.tables);
    const { machines, readings, work } = rowsOf(logs, meters);
    for (const [table, text] of [
      ['machines', machines],
      ['readings', readings],
      ['work_done', work],
    ] as const) {
      const file = join(folder, `${table}.csv`);
      writeFileSync(file, text);
      if (text !== '') await connection.run(`COPY ${table} FROM '${file}' (FORMAT csv, HEADER false)`);
    }
    await connection.run(`INSERT INTO as_of VALUES (DATE '${formatDate(today)}')`);
    await connection.run(sql.view);
    const result = await connection.runAndReadAll('SELECT * FROM due');
    return result.getRowObjectsJson().map((row) => ({
      machine: textOf(row['machine']),
      task: textOf(row['task']),
      state: textOf(row['state']),
      governing: numberOr(row['governing']),
      remaining: numberOr(row['remaining']),
      hold: typeof row['hold'] === 'string' ? row['hold'] : null,
      disputed: row['disputed'] === true,
    }));
  } finally {
    connection.closeSync();
    instance.closeSync();
    rmSync(folder, { recursive: true, force: true });
  }
}

function numberOr(value: unknown): number | null {
  return value === null || value === undefined ? null : Number(value);
}

function textOf(value: unknown): string {
  if (typeof value !== 'string') throw new Error('a column of the view is not a text');
  return value;
}
