import { mkdtemp, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fileLogbook } from '../../../src/adapters/logbook/file-logbook.js';
import { buildWriter, runWriter } from './support/run-writer.js';
import { PLAIN, reading } from './support/fixtures.js';

/** `DUEWRIGHT_LONG=1` records twice in every case. */
const LONG = process.env['DUEWRIGHT_LONG'] === '1';
const TORN = `${PLAIN}\n{"seq":3,"on":"2026-`;
let folder = '';
let writer = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'duewright-kill-'));
  writer = await buildWriter();
});
afterAll(() => rm(folder, { recursive: true }));

/** The lock of a process that was killed while it held it. */
async function goneLock(): Promise<string> {
  const path = join(folder, 'gone.jsonl');
  const killed = await runWriter(writer, [path, 'gone', 1, 5]);
  expect(killed.signal).toBe('SIGKILL');
  return await readFile(`${path}.lock`, 'utf8');
}

describe.each([
  ['a new file', undefined, false, 2],
  ['a torn tail', TORN, false, LONG ? 2 : 1],
  ['a dead writer’s lock', PLAIN, true, LONG ? 2 : 1],
])('kill −9 at every operation on the disk, starting with %s', (name, start, locked, entries) => {
  it('loses nothing acknowledged, keeps the chain, and leaves the way free', { timeout: 600_000 }, async () => {
    const lock = locked ? await goneLock() : undefined;
    const prepare = async (label: string): Promise<string> => {
      const path = join(folder, `${name.replaceAll(' ', '-')}-${label}.jsonl`);
      if (start !== undefined) await writeFile(path, start);
      if (lock !== undefined) await writeFile(`${path}.lock`, lock);
      return path;
    };
    const { operations } = await runWriter(writer, [await prepare('uncut'), 'uncut', entries]);
    expect(operations).toBeGreaterThan(15);
    for (let at = 1; at <= (operations ?? 0); at += 2) {
      await Promise.all([at, at + 1].map(async (dieAt) => await killAt(await prepare(String(dieAt)), dieAt, entries)));
    }
  });
});

async function killAt(path: string, dieAt: number, entries: number): Promise<void> {
  const killed = await runWriter(writer, [path, 'killed', entries, dieAt, (dieAt * 37) % 120]);
  const store = fileLogbook(path, { patience: 200 });
  const [receipt] = await store.append([reading(99)]);
  const { entries: found, problems } = await store.read();
  const ids = found.map((entry) => entry.id);
  expect(ids, `killed at ${dieAt}`).toEqual(expect.arrayContaining([...killed.acknowledged, receipt?.id]));
  expect(problems).toEqual([]);
  expect(new Set(ids).size).toBe(ids.length);
  // Nothing but the logbook and what was set aside: no lock is left standing.
  expect((await readdir(folder)).map((file) => join(folder, file)).filter((file) => file === `${path}.lock`)).toEqual([]);
}
