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

/** Milliseconds that a process takes from start to end. */
function milliseconds(args: readonly string[]): number {
  const start = process.hrtime.bigint();
  spawnSync(process.execPath, args, { cwd: root, stdio: 'ignore' });
  return Number(process.hrtime.bigint() - start) / 1e6;
}

/** The ratio of the quickest runs, taken in turns: those that the other work of the machine disturbed least. */
function ratio(one: readonly string[], other: readonly string[], rounds: number): number {
  const times = Array.from({ length: rounds }, () => [milliseconds(one), milliseconds(other)] as const);
  return Math.min(...times.map(([time]) => time)) / Math.min(...times.map(([, time]) => time));
}

test('a cold answer from a compiled graph takes at most 1.75 times an empty process', { timeout: 120_000 }, () => {
  const due = [built.script, 'due', join(folder, 'pump.json'), 'tests/cases/cli/files/water-pump.jsonl', '--on', '2026-06-01'];
  const empty = [join(folder, 'empty.mjs')];
  // A busy machine is measured again: it can make the ratio look worse than it is, hardly better.
  expect([10, 20, 30].some((rounds) => ratio(due, empty, rounds) <= 1.75)).toBe(true);
});
