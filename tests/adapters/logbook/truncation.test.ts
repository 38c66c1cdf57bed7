import { mkdtemp, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fileLogbook } from '../../../src/adapters/logbook/file-logbook.js';
import { readLogbookBytes } from '../../../src/adapters/logbook/read-logbook.js';
import { PLAIN, reading, steadyChance } from './support/fixtures.js';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'duewright-torn-'));
});
afterAll(() => rm(folder, { recursive: true }));

describe('a file cut off at any byte', () => {
  it('keeps every whole entry, sets the rest aside byte for byte, and goes on', async () => {
    const path = join(folder, 'whole.jsonl');
    await writeFile(path, `${PLAIN}\n`);
    await fileLogbook(path, { chance: steadyChance() }).append([reading(1), reading(2)]);
    const whole = await readFile(path);
    for (let size = 0; size <= whole.length; size += 1) await checkCut(whole, size);
  });
});

async function checkCut(whole: Buffer, size: number): Promise<void> {
  const path = join(folder, `cut-${size}.jsonl`);
  const cut = whole.subarray(0, size);
  await writeFile(path, cut);
  const ends = [...whole.entries()].filter(([, byte]) => byte === 0x0a).map(([at]) => at);
  // An entry is whole once its last byte is there, with or without its line feed.
  const expected = ends.filter((end) => size >= end).length;
  const store = fileLogbook(path, { chance: steadyChance(3) });
  const before = await store.read();
  expect(before.entries, `cut at ${size}`).toHaveLength(expected);
  await store.append([reading(9)]);
  const after = await readFile(path);
  expect(readLogbookBytes(after).entries).toHaveLength(expected + 1);
  expect(readLogbookBytes(after).problems).toEqual([]);
  const aside = (await readdir(folder)).filter((name) => name.startsWith(`cut-${size}.jsonl.`));
  const torn = before.problems.some((problem) => problem.kind === 'torn-tail');
  expect(aside).toHaveLength(torn ? 1 : 0);
  const kept = cut.length - (torn ? (await readFile(join(folder, aside[0] ?? ''))).length : 0);
  expect(after.subarray(0, kept).equals(cut.subarray(0, kept))).toBe(true);
  if (torn) expect((await readFile(join(folder, aside[0] ?? ''))).equals(cut.subarray(kept))).toBe(true);
}
