/**
 * Bundles the engine and the judge and runs them against one another: `node .scripts/differential.mjs --cases 1000000 --seed 1`.
 */
import { build } from 'esbuild';
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const folder = mkdtempSync(join(root, 'node_modules', '.differential-'));
const outfile = join(folder, 'run.mjs');
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
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
await import(pathToFileURL(outfile).href);
