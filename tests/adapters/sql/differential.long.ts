/**
 * The view against the engine at length: a million machine-tasks in DuckDB, and random schedules in a PostgreSQL server of our own.
 *
 * Run: npx vitest run --config tests/long.config.ts tests/adapters/sql
 */
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { toSql } from '../../../src/sql/to-sql.js';
import type { Day } from '../../../src/values/moment.js';
import { intervalSchedule, START } from '../../fleet/random-fleet.js';
import { expectedRows, expectSame } from './compare.js';
import { rowsInDuckdb } from './in-duckdb.js';
import { type PostgresServer, startPostgres } from './in-postgresql.js';
import { machineLog, type MachineLog } from './random-log.js';

const TASKS = ['alpha', 'beta', 'gamma', 'delta'] as const;
const seed = Number(process.env['SEED'] ?? Date.now() % 1_000_000);
const today = (n: number): Day => (START + 150 + (n % 270)) as Day;

/** So many machines, each with its own name. */
function logs(count: number, from: number): readonly MachineLog[] {
  return fc
    .sample(machineLog(TASKS), { numRuns: count, seed: from })
    .map((log, i) => ({ ...log, machine: `m-${String(i).padStart(6, '0')}` }));
}

test('a million machine-tasks in DuckDB', async () => {
  let compared = 0;
  const schedules = fc.sample(intervalSchedule, { numRuns: 50, seed });
  for (const [i, { graph }] of schedules.entries()) {
    const machines = logs(5000, seed + i);
    const rows = await rowsInDuckdb(toSql(graph, 'duckdb'), ['engine', 'shaft'], machines, today(i));
    expectSame(
      rows,
      machines.flatMap((log) => expectedRows(graph, log, today(i))),
    );
    compared += rows.length;
  }
  console.log(`seed ${seed}: ${compared} machine-tasks agree`);
  expect(compared).toBeGreaterThanOrEqual(1_000_000);
});

describe('PostgreSQL', () => {
  let server: PostgresServer;
  beforeAll(() => {
    server = startPostgres();
  });
  afterAll(() => server.stop());

  test('says what the engine says', () => {
    let compared = 0;
    const schedules = fc.sample(intervalSchedule, { numRuns: 25, seed });
    for (const [i, { graph }] of schedules.entries()) {
      const machines = logs(200, seed + i);
      const rows = server.rows(toSql(graph, 'postgresql'), ['engine', 'shaft'], machines, today(i));
      expectSame(
        rows,
        machines.flatMap((log) => expectedRows(graph, log, today(i))),
      );
      compared += rows.length;
    }
    console.log(`seed ${seed}: ${compared} machine-tasks agree`);
  });
});
