/**
 * Builds dist/: the command (everything bundled, the compiler in a chunk of its own that is loaded when a text has to be compiled)
 * and the two library entries (our code bundled, packages left to whoever installs us).
 */
import { chmodSync, mkdirSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('..', import.meta.url));
const common = {
  absWorkingDir: root,
  bundle: true,
  format: 'esm',
  target: 'es2023',
  legalComments: 'none',
  logLevel: 'warning',
  charset: 'utf8',
};

/** commander asks for Node's own modules with `require`, which an ES module has to make for itself. */
const requireBanner = "import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);";

export const command = {
  ...common,
  platform: 'node',
  entryPoints: { duewright: 'src/adapters/cli/main.ts' },
  outdir: 'dist/cli',
  chunkNames: '[name]-[hash]',
  splitting: true,
  minify: true,
  keepNames: true,
  banner: { js: requireBanner },
};

export const library = {
  ...common,
  platform: 'neutral',
  mainFields: ['module', 'main'],
  packages: 'external',
  entryPoints: ['src/index.ts', 'src/engine.ts'],
  outdir: 'dist',
  chunkNames: 'chunks/[name]-[hash]',
  splitting: true,
};

/** Old chunks would otherwise pile up beside the new ones. */
function clear() {
  for (const folder of ['dist/cli', 'dist/chunks']) rmSync(`${root}${folder}`, { recursive: true, force: true });
  mkdirSync(`${root}dist`, { recursive: true });
}

clear();
await Promise.all([build(command), build(library)]);
chmodSync(`${root}dist/cli/duewright.js`, 0o755);
