/** Prints what a cold `duewright due` on a compiled graph takes, against an empty process; run it on an idle machine after `npm run build`. Goal: 1.75. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const folder = mkdtempSync(join(tmpdir(), 'duewright-'));
const script = 'dist/cli/duewright.js';
writeFileSync(join(folder, 'empty.mjs'), '');
spawnSync(process.execPath, [script, 'compile', 'tests/cases/cli/files/water-pump.due', '--to', join(folder, 'pump.json')]);

function milliseconds(args) {
  const start = process.hrtime.bigint();
  spawnSync(process.execPath, args, { stdio: 'ignore', env: {} });
  return Number(process.hrtime.bigint() - start) / 1e6;
}

const due = [script, 'due', join(folder, 'pump.json'), 'tests/cases/cli/files/water-pump.jsonl', '--on', '2026-06-01'];
const rounds = Array.from({ length: 40 }, () => [milliseconds(due), milliseconds([join(folder, 'empty.mjs')])]);
const [cold, empty] = [0, 1].map((index) => Math.min(...rounds.map((round) => round[index])));
console.log(`cold answer ${cold.toFixed(1)} ms, empty process ${empty.toFixed(1)} ms, ratio ${(cold / empty).toFixed(2)} (goal 1.75)`);
rmSync(folder, { recursive: true });
