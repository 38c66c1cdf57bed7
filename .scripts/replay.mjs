/**
 * Bundles the properties of explanations and holds them to many random situations: `node .scripts/replay.mjs --cases 20000 --seed 1`.
 */
import { build } from 'esbuild';
import { mkdtempSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const outfile = join(mkdtempSync(join(root, 'node_modules', '.replay-')), 'run.mjs');
await build({
  entryPoints: [join(root, 'tests/properties/replay-run.ts')],
  bundle: true,
  platform: 'node',
  format: 'esm',
  outfile,
  logLevel: 'error',
  packages: 'external',
});
await import(pathToFileURL(outfile).href);
