import { describe, expect, it } from 'vitest';
import { fileLogbook } from '../../../src/adapters/logbook/file-logbook.js';
import { LogbookError } from '../../../src/adapters/logbook/logbook-error.js';
import { ForgetfulDisk, PowerCut } from './support/forgetful-disk.js';
import { reading, steadyChance } from './support/fixtures.js';

const PATH = 'tarn.jsonl';

/** Records three times, the second time two entries, until the power goes; gives back what was acknowledged. */
async function record(disk: ForgetfulDisk, first: number): Promise<string[]> {
  const store = fileLogbook(PATH, { disk, chance: steadyChance(1_000_000 + first), patience: 0 });
  const acknowledged: string[] = [];
  try {
    for (const drafts of [[reading(first)], [reading(first + 1), reading(first + 2)], [reading(first + 3)]]) {
      acknowledged.push(...(await store.append(drafts)).map((receipt) => receipt.id));
    }
  } catch (error) {
    if (!(error instanceof LogbookError && error.cause instanceof PowerCut)) throw error;
  }
  return acknowledged;
}

/** The next start of the computer: the locks of the last one speak of processes that are gone, which holder.test.ts is about. */
async function restart(disk: ForgetfulDisk, keep: number): Promise<ForgetfulDisk> {
  const after = disk.afterCut(keep);
  for (const lock of await after.siblings(`${PATH}.lock`)) await after.remove(lock);
  after.operations = 0;
  return after;
}

async function idsOn(disk: ForgetfulDisk): Promise<readonly string[]> {
  return (await fileLogbook(PATH, { disk }).read()).entries.map((entry) => entry.id);
}

describe('a power cut at any operation', () => {
  it.each([0, 0.3, 0.5, 0.9, 1])('loses nothing acknowledged, where %s of what was not synced comes through', async (keep) => {
    const uncut = new ForgetfulDisk();
    await record(uncut, 1);
    for (const bite of [Infinity, 50]) {
      for (let cutAt = 1; cutAt <= uncut.operations; cutAt += 1) {
        const disk = new ForgetfulDisk();
        disk.bite = bite;
        disk.cutAt = cutAt;
        const acknowledged = await record(disk, 1);
        // A second cut, while the first is being cleared up.
        const second = await restart(disk, keep);
        second.cutAt = 4 + (cutAt % 12);
        acknowledged.push(...(await record(second, 50)));
        const third = await restart(second, 1 - keep);
        acknowledged.push(...(await record(third, 90)));
        expect(await idsOn(third), `cut at ${cutAt}`).toEqual(expect.arrayContaining(acknowledged));
        expect((await fileLogbook(PATH, { disk: third }).read()).problems).toEqual([]);
      }
    }
  });

  it('loses nothing that was acknowledged again after its first writer died before the sync', async () => {
    const draft = { ...reading(1), id: 'given' };
    const disk = new ForgetfulDisk();
    for (disk.cutAt = 1; (await idsOn(disk)).length === 0; disk.cutAt += 1) {
      disk.operations = 0;
      await fileLogbook(PATH, { disk, chance: steadyChance(), patience: 0 })
        .append([draft])
        .catch(() => undefined);
      const dead = disk.cutAt;
      disk.cutAt = 0;
      for (const lock of await disk.siblings(`${PATH}.lock`)) await disk.remove(lock);
      disk.cutAt = dead;
    }
    disk.cutAt = 0;
    expect(await idsOn(disk.afterCut(0))).toEqual([]);
    expect(await fileLogbook(PATH, { disk, chance: steadyChance(), patience: 0 }).append([draft])).toEqual([{ id: 'given', seq: null }]);
    expect(await idsOn(disk.afterCut(0))).toEqual(['given']);
  });

  it.each([0, 0.3, 0.5, 1])(
    'keeps an unfinished last line in one place or the other, where %s of what was not synced comes through',
    async (keep) => {
      const torn = '{"on":"2026-05-12","kind":"rea';
      const prepared = async (): Promise<ForgetfulDisk> => {
        const disk = new ForgetfulDisk();
        await disk.writeNew(PATH, new TextEncoder().encode(`{"on":"2026-05-11","kind":"reading","meters":{"engine":1}}\n${torn}`));
        await disk.syncFolderOf();
        disk.operations = 0;
        return disk;
      };
      const uncut = await prepared();
      await record(uncut, 1);
      for (let cutAt = 1; cutAt <= uncut.operations; cutAt += 1) {
        const disk = await prepared();
        disk.cutAt = cutAt;
        await record(disk, 1);
        const after = disk.afterCut(keep);
        const found = await Promise.all(
          (await after.siblings(PATH)).map(async (name) => new TextDecoder().decode((await after.read(name)) ?? new Uint8Array())),
        );
        expect(
          found.some((text) => text.includes(torn)),
          `cut at ${cutAt}`,
        ).toBe(true);
      }
    },
  );

  it('is told from a disk that never syncs: the model can fail', async () => {
    const disk = new ForgetfulDisk();
    const honest = disk.openAppend.bind(disk);
    disk.openAppend = async (path) => ({ ...(await honest(path)), sync: () => Promise.resolve() });
    const acknowledged = await record(disk, 1);
    expect(acknowledged).toHaveLength(4);
    expect(await idsOn(disk.afterCut(0))).toHaveLength(0);
  });
});

describe('a disk that fills up', () => {
  it('takes back what it could not write to its end, at any number of free bytes', async () => {
    for (let room = 0; room < 1400; room += 7) {
      const disk = new ForgetfulDisk();
      disk.room = room;
      const store = fileLogbook(PATH, { disk, chance: steadyChance(), patience: 0 });
      const acknowledged: string[] = [];
      for (const number of [1, 2, 3]) {
        try {
          acknowledged.push(...(await store.append([reading(number)])).map((receipt) => receipt.id));
        } catch (error) {
          expect(error).toMatchObject({ trouble: { kind: 'disk-full' } });
        }
      }
      const { entries, problems } = await store.read();
      expect(entries.map((entry) => entry.id)).toEqual(acknowledged);
      expect(problems).toEqual([]);
    }
  });
});
