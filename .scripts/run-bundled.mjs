/** Runs a long test that is written in TypeScript: bundled into a folder of its own, which is taken away at the end. */
import { build } from 'esbuild';
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

/** The folder of the project. */
export const root = fileURLToPath(new URL('..', import.meta.url));

/** Bundles `entry`, a path within the project, and runs it in this process. */
export async function runBundled(entry) {
  const folder = mkdtempSync(join(root, 'node_modules', '.run-'));
  process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
  const outfile = join(folder, 'run.mjs');
  await build({
    entryPoints: [join(root, entry)],
    bundle: true,
    platform: 'node',
    format: 'esm',
    outfile,
    logLevel: 'error',
    packages: 'external',
  });
  await import(pathToFileURL(outfile).href);
}
