import { spawn } from 'node:child_process';
import { access, mkdtemp, readFile, readdir, rm, symlink, writeFile } from 'node:fs/promises';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { fileLogbook, systemChance } from '../../../src/adapters/logbook/file-logbook.js';
import { isGone, thisHolder } from '../../../src/adapters/logbook/holder.js';
import type { Holder } from '../../../src/adapters/logbook/holder.js';
import { withLock } from '../../../src/adapters/logbook/lock.js';
import { nodeDisk } from '../../../src/adapters/logbook/node-disk.js';
import { reading } from './support/fixtures.js';

let folder = '';
let path = '';
let count = 0;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'duewright-lock-'));
});
beforeEach(() => {
  path = join(folder, `${(count += 1)}.jsonl`);
});
afterAll(() => rm(folder, { recursive: true }));

const here = (changes: Partial<Holder> = {}): Holder => ({ ...thisHolder(new Date(0), 'a0a0a0a0a0a0'), ...changes });
const impatient = { patience: 60 };
const onLinux = process.platform === 'linux';

/** The number of a process that has ended. */
function endedPid(): Promise<number> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, ['-e', '']);
    child.on('close', () => resolve(child.pid ?? 0));
  });
}

describe('the lock', () => {
  it('says who holds it while it is held, and is gone afterwards', async () => {
    const context = { disk: nodeDisk, chance: systemChance, patience: 0 };
    const said: unknown = await withLock(context, path, async (): Promise<unknown> => JSON.parse(await readFile(`${path}.lock`, 'utf8')));
    expect(said).toMatchObject({ pid: process.pid, host: hostname() });
    await expect(access(`${path}.lock`)).rejects.toThrow('ENOENT');
  });

  it('is never taken from a live process', async () => {
    await writeFile(`${path}.lock`, JSON.stringify(here()));
    const held = fileLogbook(path, impatient).append([reading(1)]);
    await expect(held).rejects.toMatchObject({ trouble: { kind: 'busy' } });
    await expect(held).rejects.toThrow(`process ${process.pid} on ${hostname()}`);
    expect(JSON.parse(await readFile(`${path}.lock`, 'utf8'))).toEqual(here());
  });

  it.each([
    ['another computer', { host: 'far-barn', boot: 'b', machine: 'm' }],
    ['another container', { space: 'pid:[1]' }],
    ['another computer of the same name', { boot: 'b', machine: 'not-this-one' }],
  ])('is never taken from %s, where nobody can tell', async (_, changes) => {
    const holder = here({ pid: await endedPid(), ...changes });
    expect(isGone(holder)).toBe(false);
    await writeFile(`${path}.lock`, JSON.stringify(holder));
    await expect(fileLogbook(path, impatient).append([reading(1)])).rejects.toMatchObject({ trouble: { kind: 'busy' } });
  });

  it('is not taken when it does not say who holds it', async () => {
    await writeFile(`${path}.lock`, '');
    await expect(fileLogbook(path, impatient).append([reading(1)])).rejects.toThrow('a program that did not say which');
  });

  it('is cleared when its holder has ended', async () => {
    await writeFile(`${path}.lock`, JSON.stringify(here({ pid: await endedPid() })));
    expect(await fileLogbook(path, impatient).append([reading(1)])).toHaveLength(1);
  });

  it.runIf(onLinux)('is cleared when the holder’s number belongs to another process by now', async () => {
    await writeFile(`${path}.lock`, JSON.stringify(here({ started: '1' })));
    expect(await fileLogbook(path, impatient).append([reading(1)])).toHaveLength(1);
  });

  it.runIf(onLinux && here().machine !== '')('is cleared when the computer was started anew since', () => {
    expect(isGone(here({ boot: 'an-earlier-one' }))).toBe(true);
  });

  it('is cleared even after a program died while clearing it, and nothing is left lying about', async () => {
    const pid = await endedPid();
    await writeFile(`${path}.lock`, JSON.stringify(here({ pid, nonce: 'first-one' })));
    await writeFile(`${path}.lock-gone-first-one`, JSON.stringify(here({ pid, nonce: 'second-one' })));
    await writeFile(`${path}.lock-gone-second-one`, JSON.stringify(here({ pid, nonce: 'third-one' })));
    await writeFile(`${path}.lock-new-fourth-one`, JSON.stringify(here({ pid, nonce: 'fourth-one' })));
    expect(await fileLogbook(path, impatient).append([reading(1)])).toHaveLength(1);
    expect((await readdir(folder)).filter((name) => join(folder, name).startsWith(`${path}.`))).toEqual([]);
  });

  it('is one and the same under every name of the file', async () => {
    await fileLogbook(path).append([reading(1)]);
    const alias = join(folder, 'alias.jsonl');
    await symlink(path, alias);
    await writeFile(`${path}.lock`, JSON.stringify(here()));
    await expect(fileLogbook(alias, impatient).append([reading(2)])).rejects.toMatchObject({ trouble: { kind: 'busy' } });
  });

  it('lets calls within one process pass one by one', async () => {
    const store = fileLogbook(path);
    await Promise.all(Array.from({ length: 20 }, (_, number) => store.append([reading(number)])));
    const { entries, problems } = await store.read();
    expect(entries).toHaveLength(20);
    expect(problems).toEqual([]);
  });
});
