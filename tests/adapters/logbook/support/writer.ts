/**
 * A program that records, run as a child of the tests, to be killed. Arguments: file, name, how many entries, at which operation
 * on the disk to die (0: never), how many bytes of the fatal write to let through.
 *
 * Each acknowledged id goes to standard output, by a write that has returned before anything else happens.
 */
import { openSync, writeSync } from 'node:fs';
import type { AppendFile, Disk } from '../../../../src/adapters/logbook/disk.js';
import { fileLogbook, systemChance } from '../../../../src/adapters/logbook/file-logbook.js';
import { LogbookError } from '../../../../src/adapters/logbook/logbook-error.js';
import { nodeDisk } from '../../../../src/adapters/logbook/node-disk.js';

const [path = '', name = '', count = '1', dieAt = '0', through = '0'] = process.argv.slice(2);
let operations = 0;

function dying(): boolean {
  operations += 1;
  return operations === Number(dieAt);
}

function step(): void {
  if (dying()) process.kill(process.pid, 'SIGKILL');
}

const disk: Disk = {
  ...nodeDisk,
  openAppend: async (target) => {
    step();
    return file(await nodeDisk.openAppend(target));
  },
  writeNew: async (target, bytes) => {
    if (dying()) {
      writeSync(openSync(target, 'wx'), bytes, 0, Math.min(Number(through), bytes.length));
      process.kill(process.pid, 'SIGKILL');
    }
    await nodeDisk.writeNew(target, bytes);
    step();
  },
  link: async (from, to) => {
    step();
    await nodeDisk.link(from, to);
    step();
  },
  remove: async (target) => {
    step();
    await nodeDisk.remove(target);
    step();
  },
  syncFolderOf: async (target) => {
    step();
    await nodeDisk.syncFolderOf(target);
  },
};

function file(real: AppendFile): AppendFile {
  return {
    readAll: () => real.readAll(),
    isStill: (target) => real.isStill(target),
    write: async (bytes) => {
      if (dying()) {
        if (Number(through) > 0) await real.write(bytes.subarray(0, Number(through)));
        process.kill(process.pid, 'SIGKILL');
      }
      const taken = await real.write(bytes);
      step();
      return taken;
    },
    sync: async () => {
      step();
      await real.sync();
      step();
    },
    truncate: async (size) => {
      step();
      await real.truncate(size);
      step();
    },
    close: async () => {
      await real.close();
      step();
    },
  };
}

const store = fileLogbook(path, { disk, chance: systemChance, patience: 60_000 });
try {
  for (let number = 0; number < Number(count); number += 1) {
    const receipts = await store.append([
      { kind: 'reading', on: '2026-05-12', meters: { engine: 1300 + number }, note: `${name} ${number} ${'ä'.repeat(number % 50)}` },
    ]);
    for (const receipt of receipts) writeSync(1, `${receipt.id}\n`);
  }
  writeSync(1, `operations ${operations}\n`);
} catch (error) {
  writeSync(1, `error ${error instanceof LogbookError ? error.trouble.kind : String(error)}\n`);
}
