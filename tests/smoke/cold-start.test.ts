import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { buildCommand, type BuiltCommand, root } from '../adapters/cli/built-command.js';

let built: BuiltCommand;
let folder = '';
beforeAll(async () => {
  built = await buildCommand();
  folder = mkdtempSync(join(tmpdir(), 'duewright-'));
  writeFileSync(join(folder, 'empty.mjs'), '');
  built.run(['compile', 'tests/cases/cli/files/water-pump.due', '--to', join(folder, 'pump.json')]);
});
afterAll(() => {
  built.remove();
  rmSync(folder, { recursive: true, force: true });
});

/** Milliseconds of the quickest of several runs: the one that the other work of the machine disturbed least. */
function quickest(args: readonly string[]): number {
  const times = Array.from({ length: 12 }, () => {
    const start = process.hrtime.bigint();
    spawnSync(process.execPath, args, { cwd: root, stdio: 'ignore' });
    return Number(process.hrtime.bigint() - start) / 1e6;
  });
  return Math.min(...times);
}

test('a cold answer from a compiled graph takes at most 1.75 times an empty process', () => {
  const empty = quickest([join(folder, 'empty.mjs')]);
  const due = quickest([built.script, 'due', join(folder, 'pump.json'), 'tests/cases/cli/files/water-pump.jsonl', '--on', '2026-06-01']);
  expect(due / empty, `${due.toFixed(1)} ms against ${empty.toFixed(1)} ms`).toBeLessThan(1.75);
});
