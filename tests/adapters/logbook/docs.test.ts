import { execFileSync } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { memoryLogbook } from '../../../src/adapters/logbook/memory-logbook.js';
import { readLogbook } from '../../../src/adapters/logbook/read-logbook.js';
import { reading, steadyChance } from './support/fixtures.js';

const DOCS = new URL('../../../docs/logbook.md', import.meta.url);

it.runIf(process.platform === 'linux')('docs/logbook.md: a shell and sha256sum come to the same hash', async () => {
  const recipe = /```sh\n([^`]+)```/.exec(await readFile(DOCS, 'utf8'))?.[1] ?? '';
  const logbook = memoryLogbook(steadyChance());
  for (const number of [1, 2]) await logbook.append([reading(number)]);
  const folder = await mkdtemp(join(tmpdir(), 'duewright-docs-'));
  await writeFile(join(folder, 'logbook.jsonl'), logbook.text());
  const hash = execFileSync('bash', ['-c', recipe], { cwd: folder }).toString().slice(0, 64);
  await rm(folder, { recursive: true });
  expect(hash).toBe(readLogbook(logbook.text()).head?.hash);
});

it('docs/logbook.md: its hand-written line is an entry', async () => {
  const line = (await readFile(DOCS, 'utf8')).split('\n').find((each) => each.startsWith('{"on"')) ?? '';
  expect(readLogbook(line)).toMatchObject({ entries: [{ kind: 'reading' }], problems: [] });
});
