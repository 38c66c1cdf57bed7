import { execFileSync } from 'node:child_process';
import { chmod, mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { TestContext } from 'vitest';
import { fileLogbook } from '../../../src/adapters/logbook/file-logbook.js';
import { LogbookError } from '../../../src/adapters/logbook/logbook-error.js';
import { buildWriter, runWriter } from './support/run-writer.js';
import { reading } from './support/fixtures.js';

let folder = '';
const mounted: string[] = [];
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'duewright-full-'));
});
afterAll(async () => {
  for (const path of mounted) execFileSync('umount', [path]);
  await rm(folder, { recursive: true });
});

/** A small file system of its own, or `null` where this user may not mount one. */
async function smallDisk(name: string, options: string): Promise<string | null> {
  const path = join(folder, name);
  await mkdir(path);
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', options, 'tmpfs', path], { stdio: 'pipe' });
  } catch {
    return null;
  }
  mounted.push(path);
  return path;
}

/** Skipping is said aloud: a check that did not run must not look like one that passed. */
function skipAloud(context: TestContext, why: string): never {
  process.stderr.write(`\nSKIPPED, NOT CHECKED: ${context.task.name}: ${why}\n`);
  return context.skip(why);
}

describe('a full disk', () => {
  it('is refused with a clear error; what was acknowledged stays, and it goes on when there is room', async (context) => {
    const disk = await smallDisk('small', 'size=96k');
    if (disk === null) return skipAloud(context, 'mounting a tmpfs needs root');
    await writeFile(join(disk, 'ballast'), Buffer.alloc(40 * 1024));
    const path = join(disk, 'tarn.jsonl');
    const store = fileLogbook(path);
    const acknowledged: string[] = [];
    const refusal = await recordUntilRefused(store, acknowledged);
    expect(refusal).toMatchObject({ trouble: { kind: 'disk-full', path } });
    expect(refusal?.help).toContain('Make room');
    expect(acknowledged.length).toBeGreaterThan(5);
    expect((await store.read()).entries.map((entry) => entry.id)).toEqual(acknowledged);
    expect((await store.read()).problems).toEqual([]);
    await rm(join(disk, 'ballast'));
    acknowledged.push(...(await store.append([reading(9999)])).map((receipt) => receipt.id));
    expect((await store.read()).entries.map((entry) => entry.id)).toEqual(acknowledged);
  });

  it('is refused likewise where a file may not grow (RLIMIT_FSIZE)', async () => {
    const path = join(folder, 'limited.jsonl');
    // In blocks of 1024 bytes.
    const run = await runWriter(await buildWriter(), [path, 'ann', 500], { before: 'ulimit -f 8' });
    expect(run.error).toBe('disk-full');
    expect(run.acknowledged.length).toBeGreaterThan(5);
    const { entries, problems } = await fileLogbook(path).read();
    expect(entries.map((entry) => entry.id)).toEqual(run.acknowledged);
    expect(problems).toEqual([]);
  });
});

describe('a folder that cannot be written', () => {
  it('is refused with a clear error, and can still be read', async (context) => {
    const isRoot = process.getuid?.() === 0;
    const disk = isRoot ? await smallDisk('locked', 'size=96k') : join(folder, 'locked');
    if (disk === null) return skipAloud(context, 'root may write everywhere, and mounting a tmpfs did not work');
    await mkdir(disk, { recursive: true });
    const path = join(disk, 'tarn.jsonl');
    await fileLogbook(path).append([reading(1)]);
    if (isRoot) execFileSync('mount', ['-o', 'remount,ro', disk]);
    else await chmod(disk, 0o555);
    const before = await readFile(path);
    await expect(fileLogbook(path).append([reading(2)])).rejects.toMatchObject({ trouble: { kind: 'read-only', path } });
    expect((await readFile(path)).equals(before)).toBe(true);
    expect((await fileLogbook(path).read()).entries).toHaveLength(1);
  });

  it('is told from one that is not there', async () => {
    const path = join(folder, 'nowhere', 'tarn.jsonl');
    await expect(fileLogbook(path).append([reading(1)])).rejects.toMatchObject({ trouble: { kind: 'no-folder' } });
    expect((await fileLogbook(path).read()).entries).toEqual([]);
  });
});

async function recordUntilRefused(store: ReturnType<typeof fileLogbook>, acknowledged: string[]): Promise<LogbookError | null> {
  for (let number = 0; number < 2000; number += 1) {
    try {
      // Twenty at a time, so that a write is cut off in the middle of an entry.
      const drafts = Array.from({ length: 20 }, (_, index) => reading(number * 20 + index));
      acknowledged.push(...(await store.append(drafts)).map((receipt) => receipt.id));
    } catch (error) {
      if (error instanceof LogbookError) return error;
      throw error;
    }
  }
  return null;
}
