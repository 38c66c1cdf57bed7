/** What is bundled into dist/, as options for esbuild; apart from the building, so that tests can bundle to elsewhere. */
import { fileURLToPath } from 'node:url';

const common = {
  absWorkingDir: fileURLToPath(new URL('..', import.meta.url)),
  bundle: true,
  format: 'esm',
  target: 'es2023',
  legalComments: 'none',
  logLevel: 'warning',
  charset: 'utf8',
};

/** commander asks for Node's own modules with `require`, which an ES module has to make for itself. */
const requireBanner = "import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);";

/** The command: everything in it, the compiler in chunks of its own that are loaded when a text has to be compiled. */
export const command = {
  ...common,
  platform: 'node',
  entryPoints: { duewright: 'src/adapters/cli/main.ts' },
  outdir: 'dist/cli',
  chunkNames: '[name]-[hash]',
  splitting: true,
  minify: true,
  // commander starts other programs for commands that are programs of their own, of which we have none; what that takes is slow to load.
  alias: { 'node:child_process': './.scripts/no-child-process.mjs' },
  banner: { js: requireBanner },
};

/** The library entries: our code, with packages left to whoever installs us. */
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
