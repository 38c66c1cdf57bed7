/**
 * Bundles the engine and the judge and runs them against one another: `node .scripts/differential.mjs --cases 1000000 --seed 1`.
 */
import { build } from 'esbuild';
import { mkdtempSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const outfile = join(mkdtempSync(join(root, 'node_modules', '.differential-')), 'run.mjs');
await build({
  entryPoints: [join(root, 'tests/properties/differential-run.ts')],
  bundle: true,
  platform: 'node',
  format: 'esm',
  outfile,
  logLevel: 'error',
  packages: 'external',
});
process.argv.push('--keep', join(root, 'tests/conformance/found'));
await import(pathToFileURL(outfile).href);
