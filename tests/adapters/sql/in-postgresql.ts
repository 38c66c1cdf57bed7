/** A PostgreSQL server of our own in a folder of its own, reached by a socket in it. */
import { chmodSync, chownSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { ScheduleSql } from '../../../src/sql/to-sql.js';
import { formatDate } from '../../../src/values/civil.js';
import type { Day } from '../../../src/values/moment.js';
import type { DueRow } from './compare.js';
import { type MachineLog, rowsOf } from './random-log.js';

export interface PostgresServer {
  /** Fills the tables of a schedule and gives the rows of its view. */
  readonly rows: (sql: ScheduleSql, meters: readonly string[], logs: readonly MachineLog[], today: Day) => readonly DueRow[];
  readonly stop: () => void;
}

const DEBIAN = '/usr/lib/postgresql';

/** Starts a server. Fails, and says what to install, where there is none. */
export function startPostgres(): PostgresServer {
  const [version] = readdirSync(DEBIAN, { withFileTypes: true })
    .map(({ name }) => name)
    .sort()
    .reverse();
  if (version === undefined) throw new Error('this needs PostgreSQL: apt-get install postgresql');
  const folder = mkdtempSync(join(tmpdir(), 'pg-'));
  const user = ownUser();
  chownSync(folder, user.uid, user.gid);
  chmodSync(folder, 0o700);
  const run = (program: string, ...args: readonly string[]): string => {
    const { status, stdout, stderr } = spawnSync(join(DEBIAN, version, 'bin', program), args, {
      ...user,
      cwd: folder,
      encoding: 'utf8',
      maxBuffer: 2 ** 30,
    });
    if (status !== 0) throw new Error(`${program} ended with ${String(status)}: ${stderr}`);
    return stdout;
  };
  run('initdb', '-D', join(folder, 'data'), '-A', 'trust', '-U', 'tester', '-E', 'UTF8', '--locale=C', '--no-sync');
  run(
    'pg_ctl',
    '-D',
    join(folder, 'data'),
    '-w',
    '-l',
    join(folder, 'log'),
    '-o',
    `-k ${folder} -c listen_addresses= -c fsync=off`,
    'start',
  );
  const psql = (script: string): string => {
    writeFileSync(join(folder, 'script.sql'), script);
    return run(
      'psql',
      '-h',
      folder,
      '-U',
      'tester',
      '-d',
      'postgres',
      '-X',
      '-q',
      '-v',
      'ON_ERROR_STOP=1',
      '-f',
      join(folder, 'script.sql'),
    );
  };
  return {
    rows: (sql, meters, logs, today) => {
      const { machines, readings, work } = rowsOf(logs, meters);
      for (const [name, text] of Object.entries({ machines, readings, work })) writeFileSync(join(folder, `${name}.csv`), text);
      const script = [
        'SET client_min_messages = warning; DROP VIEW IF EXISTS due; DROP TABLE IF EXISTS as_of, machines, readings, work_done;',
        sql.tables,
        ...[
          ['machines', 'machines'],
          ['readings', 'readings'],
          ['work_done', 'work'],
        ].map(([table, file]) => `\\copy ${table ?? ''} FROM '${folder}/${file ?? ''}.csv' (FORMAT csv)`),
        `INSERT INTO as_of VALUES (DATE '${formatDate(today)}'); ANALYZE;`,
        sql.view,
        'COPY (SELECT * FROM due) TO STDOUT (FORMAT csv);',
      ];
      return psql(script.join('\n'))
        .split('\n')
        .filter((line) => line !== '')
        .map(rowOf);
    },
    stop: () => {
      run('pg_ctl', '-D', join(folder, 'data'), '-m', 'immediate', 'stop');
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** PostgreSQL does not run as root; the package made a user for it. */
function ownUser(): { readonly uid: number; readonly gid: number } {
  if (process.getuid?.() !== 0) return { uid: process.getuid?.() ?? 0, gid: process.getgid?.() ?? 0 };
  const id = (flag: string): number => Number(spawnSync('id', [flag, 'postgres'], { encoding: 'utf8' }).stdout);
  return { uid: id('-u'), gid: id('-g') };
}

function rowOf(line: string): DueRow {
  const [machine = '', task = '', state = '', governing, remaining, hold, disputed] = line.split(',');
  return {
    machine,
    task,
    state,
    governing: numberOr(governing),
    remaining: numberOr(remaining),
    hold: hold === '' || hold === undefined ? null : hold,
    disputed: disputed === 't',
  };
}

function numberOr(text: string | undefined): number | null {
  return text === undefined || text === '' ? null : Number(text);
}
