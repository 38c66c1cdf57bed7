/**
 * Bundles the properties of explanations and holds them to many random situations: `node .scripts/replay.mjs --cases 20000 --seed 1`.
 */
import { build } from 'esbuild';
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const folder = mkdtempSync(join(root, 'node_modules', '.replay-'));
const outfile = join(folder, 'run.mjs');
await build({
  entryPoints: [join(root, 'tests/properties/replay-run.ts')],
  bundle: true,
  platform: 'node',
  format: 'esm',
  outfile,
  logLevel: 'error',
  packages: 'external',
});
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
await import(pathToFileURL(outfile).href);
