/**
 * Coverage-guided fuzzing: `node .scripts/fuzz.mjs [--minutes 8] [--seed 1] [--sort schedule|logbook|graph|layout|table|feed]`.
 *
 * Inputs are bent at random; one that makes code run that no other did, or much more often, is kept and bent further. Which code ran is V8's own
 * precise block coverage, read after each input. What makes the program throw, hang for 30 s or run out of 256 MB is written to
 * tests/hostile/found/ with its seed. The same seed tries the same inputs in the same order.
 */
import { build } from 'esbuild';
import { fork } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const option = (name, otherwise) => (process.argv.includes(name) ? process.argv[process.argv.indexOf(name) + 1] : otherwise);
const endings = { schedule: 'due', logbook: 'jsonl', graph: 'json', layout: 'due', table: 'csv', feed: 'xml' };
const minutes = Number(option('--minutes', 8));
const sorts = option('--sort', undefined) === undefined ? Object.keys(endings) : [option('--sort')];
const folder = mkdtempSync(join(root, 'node_modules', '.fuzz-'));
const outfile = join(folder, 'target.mjs');
const banner = { js: "import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);" };
await build({
  absWorkingDir: root,
  entryPoints: ['tests/hostile/fuzz-target.ts'],
  bundle: true,
  platform: 'node',
  format: 'esm',
  outfile,
  banner,
  logLevel: 'error',
});

const found = new Map();
for (const [index, sort] of sorts.entries()) {
  const end = Date.now() + (minutes * 60_000) / sorts.length;
  let seed = Number(option('--seed', 1)) + 1000 * index;
  while (Date.now() < end - 2_000) {
    console.log(`${sort}, seed ${seed}:`);
    await runChild(sort, seed, end);
    seed += 1;
  }
}
rmSync(folder, { recursive: true });
console.log(`\n${found.size} different faults found.`);
for (const [fault, file] of found) console.log(`  ${file}: ${fault}`);
if (found.size > 0) process.exitCode = 1;

function runChild(sort, seed, end) {
  return new Promise((resolve) => {
    const child = fork(fileURLToPath(new URL('./fuzz-loop.mjs', import.meta.url)), [outfile, sort, String(seed), String(end)], {
      execArgv: ['--max-old-space-size=256'],
    });
    let current = '';
    let hung = false;
    const rearm = () => setTimeout(() => ((hung = true), child.kill('SIGKILL')), 30_000);
    let watch = setTimeout(() => child.kill('SIGKILL'), 60_000);
    child.on('message', ({ kind, input, fault, words }) => {
      clearTimeout(watch);
      watch = rearm();
      if (kind === 'trying') current = input;
      else if (kind === 'fault') keep(sort, seed, input, fault);
      else console.log(`  ${words}`);
    });
    child.on('exit', (code) => {
      clearTimeout(watch);
      if (code !== 0) keep(sort, seed, current, hung ? 'hangs for 30 s' : 'ends the process (out of memory?)');
      resolve();
    });
  });
}

function keep(sort, seed, input, fault) {
  const place = fault
    .split('\n')
    .slice(0, 3)
    .join(' ')
    .replace(/\(file:[^)]*\)/g, '')
    .slice(0, 240);
  // What stopped a process says nothing about where, so that each such input is kept.
  if (found.has(`${sort}: ${place}`)) return;
  const name = `${sort}-${createHash('sha256').update(input).digest('hex').slice(0, 10)}.${endings[sort]}`;
  found.set(place.includes(' at ') ? `${sort}: ${place}` : `${sort}: ${place}, seed ${seed}`, name);
  mkdirSync(join(root, 'tests/hostile/found'), { recursive: true });
  writeFileSync(join(root, 'tests/hostile/found', name), input);
  console.log(`  FAULT (seed ${seed}) ${name}: ${place}`);
}
