import { mkdtemp, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { Disk } from '../../../src/adapters/logbook/disk.js';
import { fileLogbook } from '../../../src/adapters/logbook/file-logbook.js';
import { nodeDisk } from '../../../src/adapters/logbook/node-disk.js';
import { PLAIN, reading } from './support/fixtures.js';

/** A disk on which another program puts another file in place of the logbook, `times` times, each just after an entry was synced. */
function replacing(times: number): Disk {
  let left = times;
  return {
    ...nodeDisk,
    openAppend: async (path) => {
      const file = await nodeDisk.openAppend(path);
      const sync = async (): Promise<void> => {
        await file.sync();
        if ((left -= 1) < 0) return;
        await writeFile(`${path}.new`, `${PLAIN}\n`);
        await rename(`${path}.new`, path);
      };
      return { ...file, sync };
    },
  };
}

it('acknowledges only what stands in the file that the path names, though an editor or version control replaces it meanwhile', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'duewright-replaced-'));
  const path = join(folder, 'tarn.jsonl');
  const [receipt] = await fileLogbook(path, { disk: replacing(2) }).append([reading(1)]);
  const { entries, problems } = await fileLogbook(path).read();
  expect(entries.map(({ id }) => id)).toContain(receipt?.id);
  expect(entries).toHaveLength(3);
  expect(problems).toEqual([]);
  await expect(fileLogbook(path, { disk: replacing(Infinity) }).append([reading(2)])).rejects.toThrow('keeps putting other files');
  await rm(folder, { recursive: true });
});
