/**
 * Prints what a cold `duewright due` takes against an empty process, after `npm run build`: in processor time, so that others at work disturb
 * little (Linux only). Goal: 1.75.
 *
 * `installed`: as a package that has just been installed, with nothing kept from an earlier run and nothing laid down by the build
 * (docs/command-line.md). `built`: the first run after a build. `again`: the same question for the second time, of an installed package.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const folder = mkdtempSync(join(tmpdir(), 'duewright-'));
const script = 'dist/cli/duewright.js';
const installed = join(folder, 'cli/duewright.js');
cpSync('dist/cli', join(folder, 'cli'), { recursive: true });
rmSync(join(folder, 'cli/code'), { recursive: true, force: true });
const [empty, kept] = ['empty.mjs', 'kept'].map((name) => join(folder, name));
writeFileSync(empty, '');

/** Processor time of all processes started from here that have ended, in hundredths of a second (proc(5), fields 16 and 17). */
function spent() {
  const stat = readFileSync('/proc/self/stat', 'utf8');
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  return Number(fields[13]) + Number(fields[14]);
}

/** What one run takes, in milliseconds: the mean of so many that hundredths of a second tell. */
function mean(rounds, args, cache) {
  const before = spent();
  for (let round = 0; round < rounds; round += 1) run(args, cache);
  return ((spent() - before) * 10) / rounds;
}

function run(args, cache) {
  spawnSync(process.execPath, args, { stdio: 'ignore', env: { DUEWRIGHT_CACHE: cache } });
}

function compiled(schedule, name) {
  const graph = join(folder, name);
  spawnSync(process.execPath, [script, 'compile', schedule, '--to', graph]);
  return graph;
}

const pump = ['tests/cases/cli/files/water-pump.due', 'tests/cases/cli/files/water-pump.jsonl', '2026-06-01'];
const tractor = ['schedules/orchard-tractor.due', 'schedules/orchard-tractor.logbook.jsonl', '2026-05-08'];
const due = (schedule, [, logbook, day]) => ['due', schedule, logbook, '--on', day];
const questions = new Map([
  ['3 tasks, 5 entries, compiled', due(compiled(pump[0], 'pump.json'), pump)],
  ['3 tasks, 5 entries, schedule', due(pump[0], pump)],
  ['82 tasks, 666 entries, compiled', due(compiled(tractor[0], 'tractor.json'), tractor)],
  ['82 tasks, 666 entries, schedule', due(tractor[0], tractor)],
]);

const base = mean(60, [empty], '');
console.log(`empty process ${base.toFixed(1)} ms`);
for (const [what, args] of questions) {
  const first = mean(20, [installed, ...args], '');
  const built = mean(20, [script, ...args], '');
  run([installed, ...args], kept);
  const again = mean(20, [installed, ...args], kept);
  console.log(`${what}: installed ${ratio(first)}, built ${ratio(built)}, again ${ratio(again)}`);
}
rmSync(folder, { recursive: true });

function ratio(time) {
  return `${time.toFixed(1)} ms (${(time / base).toFixed(2)})`;
}
