import { mkdtemp, readFile, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fileLogbook } from '../../../src/adapters/logbook/file-logbook.js';
import { verifyLogbook } from '../../../src/adapters/logbook/verify-logbook.js';
import { buildWriter, runWriter } from './support/run-writer.js';

/** `DUEWRIGHT_LONG=1` runs the long variant. */
const ENTRIES = process.env['DUEWRIGHT_LONG'] === '1' ? 500 : 25;
const WRITERS = ['ann', 'ben', 'cat', 'dan', 'eve', 'fay', 'gus', 'hal'];
let folder = '';
let writer = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'duewright-eight-'));
  writer = await buildWriter();
});
afterAll(() => rm(folder, { recursive: true }));

describe('eight programs that record in one logbook at the same time', () => {
  it('lose nothing and mix nothing', { timeout: 600_000 }, async () => {
    const path = join(folder, 'eight.jsonl');
    const runs = await Promise.all(WRITERS.map((name) => runWriter(writer, [path, name, ENTRIES])));
    expect(runs.map((run) => run.error)).toEqual(WRITERS.map(() => null));
    const logbook = await fileLogbook(path).read();
    const acknowledged = runs.flatMap((run) => run.acknowledged);
    expect(acknowledged).toHaveLength(WRITERS.length * ENTRIES);
    expect([...logbook.entries.map((entry) => entry.id)].sort()).toEqual([...acknowledged].sort());
    expect(verifyLogbook(logbook)).toMatchObject({ verdict: 'intact', problems: [], chained: acknowledged.length });
    expect(logbook.lines.map((line) => (line.kind === 'chained' ? line.seq : 0))).toEqual(acknowledged.map((_, index) => index + 1));
    expect((await readFile(path, 'utf8')).trimEnd().split('\n')).toHaveLength(acknowledged.length);
    // Each writer's own entries stand in the order in which it wrote them.
    for (const name of WRITERS) {
      const own = logbook.entries.filter((entry) => entry.note?.startsWith(`${name} `)).map((entry) => Number(entry.note?.split(' ')[1]));
      expect(own).toEqual(Array.from({ length: ENTRIES }, (_, index) => index));
    }
  });

  it('lose nothing while some are killed and their locks are cleared by several at once', { timeout: 600_000 }, async () => {
    const path = join(folder, 'killed.jsonl');
    const doomed = (name: string, dieAt: number): Promise<Awaited<ReturnType<typeof runWriter>>> =>
      runWriter(writer, [path, name, ENTRIES, dieAt, 40]);
    const runs = await Promise.all([
      ...WRITERS.slice(0, 4).map((name) => runWriter(writer, [path, name, ENTRIES])),
      ...WRITERS.slice(4).flatMap((name, index) => [9, 12, 14, 31].map((dieAt) => doomed(`${name}-${dieAt}`, dieAt + index))),
    ]);
    expect(runs.slice(0, 4).map((run) => run.error)).toEqual([null, null, null, null]);
    expect(runs.slice(4).filter((run) => run.signal === 'SIGKILL').length).toBeGreaterThan(8);
    const store = fileLogbook(path);
    await store.append([{ kind: 'refuelled', on: '2026-05-12' }]);
    const logbook = await store.read();
    const ids = logbook.entries.map((entry) => entry.id);
    expect(ids).toEqual(expect.arrayContaining(runs.flatMap((run) => run.acknowledged)));
    expect(new Set(ids).size).toBe(ids.length);
    expect(verifyLogbook(logbook)).toMatchObject({ verdict: 'intact', problems: [] });
    expect((await readdir(folder)).filter((name) => name === 'killed.jsonl.lock')).toEqual([]);
  });
});
