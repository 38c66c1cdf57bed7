/**
 * Measures every hostile file in processes of their own with 64 MB of heap: `node .scripts/hostile-report.mjs [--runs 3] [--only WORDS] [--as-command]`.
 *
 * First everything is asked of a file at once. A file that takes longer than the bound so is asked each question by itself, as a command or an editor
 * asks it; every one has to keep to the bound, by the clock and beyond starting up and making the file: the least of some runs, of more where that is
 * late, since a busy machine only ever adds to it. Two files that are compared have the time of two. The time of the processor stands beside it (of all
 * threads, V8's own among them). With `--as-command` V8 waits with optimizing as long as the command has it wait (src/adapters/cli/start.ts), else as
 * it does by itself. The last time is that of asking again in the same process, which the bound does not speak of: it tells the work from the first
 * running of the code.
 */
import { build } from 'esbuild';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const option = (name, otherwise) => (process.argv.includes(name) ? process.argv[process.argv.indexOf(name) + 1] : otherwise);
const folder = mkdtempSync(join(root, 'node_modules', '.hostile-'));
const common = {
  absWorkingDir: root,
  bundle: true,
  platform: 'node',
  format: 'esm',
  logLevel: 'error',
  outdir: folder,
  outExtension: { '.js': '.mjs' },
};
const banner = { js: "import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);" };
await build({ ...common, banner, entryPoints: ['tests/hostile/measure-case.ts', 'tests/hostile/hostile-cases.ts'] });
const { hostileCases } = await import(pathToFileURL(join(folder, 'hostile-cases.mjs')).href);

const BOUND = 250;
const settings = process.argv.includes('--as-command') ? ['--interrupt-budget=1000000'] : [];
const only = option('--only', '');
const rows = [];
for (const [index, { name, says, door }] of hostileCases.entries()) {
  if (!name.includes(only)) continue;
  const bound = door === 'compare' ? 2 * BOUND : BOUND;
  const whole = leastOf(index, bound);
  const late = whole.cpu > bound && whole.questions.length > 1;
  const singly = late ? whole.questions.map((question) => ({ question, ...leastOf(index, bound, question) })) : [];
  const slowest = singly.reduce((most, each) => (each.elapsed > most.elapsed ? each : most), singly[0] ?? whole);
  const all = singly.length > 0 ? singly : [whole];
  const said = all.flatMap((each) => each.said);
  const ended = all.every(({ kind }) => kind !== 'thrown' && kind !== 'died');
  const expected = says === undefined ? whole.kind === 'answered' || said.length > 0 : whole.said.some((each) => each.includes(says));
  const right = ended && expected;
  const fits = right && slowest.elapsed <= bound;
  const inProcessor = right && all.every(({ cpu }) => cpu <= bound);
  rows.push({ name, slowest, fits, inProcessor, atOnce: right && whole.elapsed <= bound });
  const words = [...new Set(said)].join(', ').slice(0, ended ? 70 : 400);
  const asked = late ? `${slowest.question} ${times(slowest)}` : '';
  console.log(`| ${fits ? 'yes' : 'NO '} | ${name} | ${whole.kind}${words === '' ? '' : `: ${words}`} | ${times(whole)} | ${asked} |`);
}
rmSync(folder, { recursive: true });
const late = rows.filter(({ fits }) => !fits);
const most = rows.reduce((max, { slowest }) => Math.max(max, slowest.elapsed), 0);
const count = (which) => rows.filter((row) => row[which]).length;
console.log(`
${rows.length} files; within ${BOUND} ms and 64 MB of heap, in words:
  ${count('fits')} for each question by itself, by the clock; the slowest took ${Math.round(most)} ms
  ${count('inProcessor')} for each question by itself, in processor time of all threads
  ${count('atOnce')} for all questions at once, by the clock`);
if (late.length > 0) process.exitCode = 1;

/** What a clock shows, processor time, and asking once more. */
function times({ cpu, elapsed, again }) {
  return `${Math.round(elapsed)} ms (processor ${Math.round(cpu)}, again ${Math.round(again)})`;
}

/** The least of the runs that are asked for; where even that is late, of four times as many, for a burst of other work may last as long as those. */
function leastOf(index, bound, question = '') {
  const asked = Number(option('--runs', 3));
  let least = run(index, question);
  // Of several questions at once each is asked by itself then.
  const most = question === '' && least.questions.length > 1 ? asked : 4 * asked;
  for (let runs = 1; runs < asked || (runs < most && least.elapsed > bound); runs += 1) {
    const next = run(index, question);
    if (next.elapsed < least.elapsed) least = next;
  }
  return least;
}

function run(index, question) {
  const { stdout, stderr, status } = spawnSync(
    process.execPath,
    ['--max-old-space-size=64', ...settings, join(folder, 'measure-case.mjs'), String(index), question],
    { encoding: 'utf8', timeout: 15_000 },
  );
  try {
    return JSON.parse(stdout);
  } catch {
    return {
      kind: 'died',
      said: [`status ${status}`, ...(stderr.match(/heap out of memory|Error: .*/g) ?? []).slice(0, 2)],
      cpu: Infinity,
      elapsed: Infinity,
      again: Infinity,
      questions: [],
    };
  }
}
