/**
 * Measures every hostile file in a process of its own with 64 MB of heap: `node .scripts/hostile-report.mjs [--runs 3] [--only WORDS] [--as-command]`.
 *
 * Time is the processor's, beyond starting up and making the file; the least of some runs, since a busy machine only ever adds to it.
 * With `--as-command` V8 waits with optimizing as long as the command has it wait (src/adapters/cli/start.ts), else as it does by itself.
 * The second time is that of asking again in the same process, which the bound does not speak of: it tells the work from the first running of the code.
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
for (const [index, { name, says }] of hostileCases.entries()) {
  if (!name.includes(only)) continue;
  const runs = Array.from({ length: Number(option('--runs', 3)) }, () => run(index));
  const best = runs.reduce((least, each) => (each.cpu < least.cpu ? each : least));
  const expected = says === undefined ? best.kind === 'answered' || best.said.length > 0 : best.said.some((each) => each.includes(says));
  const fits = best.kind !== 'thrown' && best.kind !== 'died' && expected && best.cpu <= BOUND;
  rows.push({ name, ...best, fits });
  const words = best.said.join(', ').slice(0, best.kind === 'thrown' || best.kind === 'died' ? 400 : 70);
  console.log(
    `| ${fits ? 'yes' : 'NO '} | ${name} | ${best.kind}${words === '' ? '' : `: ${words}`} | ${Math.round(best.cpu)} ms | ${Math.round(best.again)} ms |`,
  );
}
rmSync(folder, { recursive: true });
const late = rows.filter(({ fits }) => !fits);
const most = rows.reduce((max, { cpu }) => Math.max(max, cpu), 0);
console.log(
  `\n${rows.length} files, ${rows.length - late.length} as promised (${BOUND} ms of processor time, 64 MB of heap); the slowest took ${Math.round(most)} ms.`,
);
if (late.length > 0) process.exitCode = 1;

function run(index) {
  const { stdout, stderr, status } = spawnSync(
    process.execPath,
    ['--max-old-space-size=64', ...settings, join(folder, 'measure-case.mjs'), String(index)],
    { encoding: 'utf8', timeout: 15_000 },
  );
  try {
    return JSON.parse(stdout);
  } catch {
    return {
      kind: 'died',
      said: [`status ${status}`, ...(stderr.match(/heap out of memory|Error: .*/g) ?? []).slice(0, 2)],
      cpu: Infinity,
      again: Infinity,
      shown: 0,
    };
  }
}
