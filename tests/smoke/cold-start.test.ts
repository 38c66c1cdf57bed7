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

/**
 * Seconds of processor time that ten runs take, by the shell's own count: other work on the machine hardly changes it, unlike the time
 * on the clock.
 */
function processorSeconds(args: readonly string[]): number {
  const loop = 'for i in 1 2 3 4 5 6 7 8 9 10; do "$@" > /dev/null; done; times';
  const { stdout } = spawnSync('sh', ['-c', loop, 'sh', process.execPath, ...args], { cwd: root, encoding: 'utf8', env: {} });
  const children = stdout.trim().split('\n').at(-1) ?? '';
  const spent = [...children.matchAll(/(\d+)m([\d.]+)s/g)].map(([, minutes, seconds]) => Number(minutes) * 60 + Number(seconds));
  expect(spent).toHaveLength(2);
  return spent.reduce((sum, each) => sum + each, 0);
}

test.skipIf(process.platform === 'win32')(
  'a cold answer from a compiled graph takes at most 1.75 times an empty process',
  { timeout: 120_000 },
  () => {
    const due = [built.script, 'due', join(folder, 'pump.json'), 'tests/cases/cli/files/water-pump.jsonl', '--on', '2026-06-01'];
    const rounds = [1, 2, 3].map(() => processorSeconds(due) / processorSeconds([join(folder, 'empty.mjs')]));
    expect(Math.min(...rounds), rounds.map((ratio) => ratio.toFixed(2)).join(', ')).toBeLessThan(1.75);
  },
);
