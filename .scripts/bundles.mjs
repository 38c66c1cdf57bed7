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

/** What the command imports only when it is needed, and the file that holds it. */
const apart = {
  'index.js': './compiler.js',
  'rule-graph-html.js': './drawing.js',
  'logbook-commands.js': './logbook.js',
  'authoring-commands.js': './authoring.js',
  'outlook-commands.js': './outlook.js',
  'year-page.js': './pictures.js',
  'serve-editor.js': './editor.js',
};

/**
 * Keeps what is imported on demand in whole files of its own, instead of cutting everything into the many small ones that the parts
 * share: a command that needs none of them loads one file.
 */
const keepApart = {
  name: 'keep-apart',
  setup: (build) =>
    build.onResolve({ filter: /^\./ }, ({ kind, path }) => {
      if (kind !== 'dynamic-import') return undefined;
      const file = apart[path.split('/').at(-1)];
      return file === undefined ? { errors: [{ text: `name the file for ${path} in \`apart\`` }] } : { path: file, external: true };
    }),
};

/** The command: everything in it, but for the compiler, drawings, the outlook and the writing of logbooks, which are loaded on demand. */
export const command = {
  ...common,
  platform: 'node',
  entryPoints: {
    duewright: 'src/adapters/cli/main.ts',
    compiler: 'src/index.ts',
    drawing: 'src/render/rule-graph-html.ts',
    'fleet-worker': 'src/adapters/fleet/fleet-worker.ts',
    logbook: 'src/adapters/cli/logbook-commands.ts',
    authoring: 'src/adapters/cli/authoring-commands.ts',
    outlook: 'src/adapters/cli/outlook-commands.ts',
    editor: 'src/adapters/lsp/serve-editor.ts',
    pictures: 'src/adapters/page/year/year-page.ts',
  },
  outdir: 'dist/cli',
  minify: true,
  plugins: [keepApart],
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
  entryPoints: [
    'src/index.ts',
    'src/engine.ts',
    'src/ahead.ts',
    'src/adapters/logbook.ts',
    'src/adapters/exchange.ts',
    'src/adapters/fleet.ts',
  ],
  outdir: 'dist',
  chunkNames: 'chunks/[name]-[hash]',
  splitting: true,
};
