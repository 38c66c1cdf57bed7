import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fileLogbook } from '../../../src/adapters/logbook/file-logbook.js';
import { buildWriter, runWriter } from './support/run-writer.js';
import { PLAIN, reading } from './support/fixtures.js';

const TORN = `${PLAIN}\n{"seq":3,"on":"2026-`;
let folder = '';
let writer = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'duewright-kill-'));
  writer = await buildWriter();
});
afterAll(() => rm(folder, { recursive: true }));

/** The process that wrote the lock ended long before. */
async function goneLock(path: string): Promise<void> {
  const killed = await runWriter(writer, [path, 'gone', 1, 4]);
  expect(killed.signal).toBe('SIGKILL');
  expect((await readdir(folder)).filter((name) => join(folder, name) === `${path}.lock`)).toHaveLength(1);
}

describe.each([
  ['a new file', undefined, false],
  ['a torn tail', TORN, false],
  ['a dead writer’s lock', PLAIN, true],
])('kill −9 at every operation on the disk, starting with %s', (name, start, locked) => {
  it('loses nothing acknowledged, keeps the chain, and leaves the way free', { timeout: 60_000 }, async () => {
    const prepare = async (label: string): Promise<string> => {
      const path = join(folder, `${name.replaceAll(' ', '-')}-${label}.jsonl`);
      if (start !== undefined) await writeFile(path, start);
      if (locked) await goneLock(path);
      return path;
    };
    const { operations } = await runWriter(writer, [await prepare('uncut'), 'uncut', 2]);
    expect(operations).toBeGreaterThan(20);
    for (let at = 1; at <= (operations ?? 0); at += 2) {
      await Promise.all([at, at + 1].map(async (dieAt) => await killAt(await prepare(String(dieAt)), dieAt)));
    }
  });
});

async function killAt(path: string, dieAt: number): Promise<void> {
  const killed = await runWriter(writer, [path, 'killed', 2, dieAt, (dieAt * 37) % 120]);
  const store = fileLogbook(path, { patience: 200 });
  const [receipt] = await store.append([reading(99)]);
  const { entries, problems } = await store.read();
  const ids = entries.map((entry) => entry.id);
  expect(ids, `killed at ${dieAt}`).toEqual(expect.arrayContaining([...killed.acknowledged, receipt?.id]));
  expect(problems).toEqual([]);
  expect(new Set(ids).size).toBe(ids.length);
  // Nothing but the logbook and what was set aside: no lock is left standing.
  expect((await readdir(folder)).map((found) => join(folder, found)).filter((found) => found === `${path}.lock`)).toEqual([]);
}
