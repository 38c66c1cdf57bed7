/** Bundles one of the benchmarks in tests/bench and runs it: `node .scripts/bench.mjs parse`. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('..', import.meta.url));
const [name = ''] = process.argv.slice(2);
const outfile = `${root}node_modules/.cache/bench/${name}.mjs`;
await build({
  absWorkingDir: root,
  entryPoints: [`tests/bench/${name}.bench.ts`],
  bundle: true,
  platform: 'node',
  format: 'esm',
  packages: 'external',
  // As the library is bundled.
  minifySyntax: true,
  outfile,
});
const { status } = spawnSync(process.execPath, [outfile, ...process.argv.slice(3)], { cwd: root, stdio: 'inherit' });
process.exit(status ?? 1);
