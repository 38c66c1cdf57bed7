/** What is bundled into dist/, apart from the building, so that tests can bundle to elsewhere. */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { chmodSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { noticing } from './notices.mjs';

const common = {
  absWorkingDir: fileURLToPath(new URL('..', import.meta.url)),
  bundle: true,
  format: 'esm',
  target: 'es2023',
  legalComments: 'none',
  logLevel: 'warning',
  charset: 'utf8',
};

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

/** What the command is made of: all as CommonJS, which Node starts quicker than ES modules, and which can be run from V8's own code. */
const node = {
  ...common,
  platform: 'node',
  format: 'cjs',
  minify: true,
  // One byte a sign: read and compiled quicker than UTF-8.
  charset: 'ascii',
  // As `require`, which `src/adapters/cli/start.ts` gives to each file.
  supported: { 'dynamic-import': false },
  define: { 'import.meta.url': 'fileUrl' },
  banner: { js: "const fileUrl = require('node:url').pathToFileURL(__filename).href;" },
};

/** The command: everything in it, but for the compiler, drawings, the outlook and the writing of logbooks, which are loaded on demand. */
const command = {
  ...node,
  entryPoints: {
    command: 'src/adapters/cli/main.ts',
    compiler: 'src/index.ts',
    drawing: 'src/render/rule-graph-html.ts',
    'fleet-worker': 'src/adapters/fleet/fleet-worker.ts',
    logbook: 'src/adapters/cli/logbook-commands.ts',
    authoring: 'src/adapters/cli/authoring-commands.ts',
    outlook: 'src/adapters/cli/outlook-commands.ts',
    editor: 'src/adapters/lsp/serve-editor.ts',
    pictures: 'src/adapters/page/year/year-page.ts',
  },
  plugins: [keepApart, noticing],
  // commander starts other programs for commands that are programs of their own, of which we have none; what that takes is slow to load.
  alias: { 'node:child_process': './.scripts/no-child-process.mjs' },
};

/** esbuild leaves regular expressions as they are; `start.ts` reads one byte a sign. */
function spellInAscii(file) {
  const text = readFileSync(file, 'utf8');
  if (/[\u{10000}-\u{10ffff}]/u.test(text)) throw new Error(`${file} holds a sign that would take two escapes`);
  writeFileSync(
    file,
    text.replace(/[^\x00-\x7f]/g, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`),
  );
}

/** `duewright/fleet-worker` is run, in a thread of its own, and gives nothing to whoever imports it. */
const workerTypes = `/**
 * What runs in each worker thread of \`assessFleet\` (\`duewright/fleet\`). It exports nothing: give its address as \`script\`.
 *
 * @example assessFleet(graph, lines, { today, workers: 2, script: new URL(import.meta.resolve('duewright/fleet-worker')) })
 */
export {};
`;

/** Bundles the command into a folder of its own, whose name ends with a slash. */
export async function buildCommand(folder) {
  await build({ ...command, outdir: folder });
  for (const name of Object.keys(command.entryPoints)) spellInAscii(`${folder}${name}.js`);
  // Nearer than the package's own manifest, which says that files are ES modules.
  writeFileSync(`${folder}package.json`, '{ "type": "commonjs" }\n');
  writeFileSync(`${folder}fleet-worker.d.ts`, workerTypes);
  const files = Object.keys(command.entryPoints).map((name) => readFileSync(`${folder}${name}.js`));
  const number = files
    .reduce((hash, file) => hash.update(file), createHash('sha256'))
    .digest('hex')
    .slice(0, 16);
  const start = { entryPoints: { duewright: 'src/adapters/cli/start.ts' }, define: { BUILD: JSON.stringify(number) }, banner: {} };
  await build({ ...node, ...start, outdir: folder });
  chmodSync(`${folder}duewright.js`, 0o755);
}

const pump = (command, ...more) => [
  command,
  'tests/cases/cli/files/water-pump.due',
  'tests/cases/cli/files/water-pump.jsonl',
  ...more,
  '--on',
  '2026-06-01',
];

/** The questions of every day, asked once, so that not even the first one after a build waits for V8 to compile the command. */
const daily = [pump('due'), pump('why', 'change-engine-oil'), pump('walk'), ['check', 'schedules/orchard-tractor.due']];

/** Lays down beside the command what V8 makes of it, for the Node that builds. It is not published: whoever installs us has another. */
export function layDownCode(folder) {
  const code = `${folder}code/`;
  for (const question of daily) {
    const { status, stderr } = spawnSync(process.execPath, [`${folder}duewright.js`, ...question], {
      cwd: common.absWorkingDir,
      env: { DUEWRIGHT_CACHE: code },
      encoding: 'utf8',
    });
    if (status === null || status > 1) throw new Error(`\`${question[0]}\` failed after the build: ${stderr}`);
  }
  for (const name of readdirSync(code)) if (name.endsWith('.graph')) rmSync(`${code}${name}`);
}

/**
 * Where an entry takes nothing from a piece that its other pieces take from, esbuild imports it all the same, for the order in which modules run. Ours do
 * nothing when they run, and a bundler that reads so in our manifest warns of each such import.
 */
const withoutBareImports = {
  name: 'without-bare-imports',
  setup: (build) =>
    build.onEnd(() => {
      const folder = resolve(common.absWorkingDir, build.initialOptions.outdir);
      for (const name of readdirSync(folder).filter((each) => each.endsWith('.js'))) {
        const text = readFileSync(`${folder}/${name}`, 'utf8');
        writeFileSync(`${folder}/${name}`, text.replace(/^import "\.\/chunks\/[^"]+";\n/gm, ''));
      }
    }),
};

/** The library entries: our code, with packages left to whoever installs us. */
export const library = {
  ...common,
  // Puts constants in their places, which no run-time does across modules: the loops of fleets are a third slower without.
  minifySyntax: true,
  platform: 'neutral',
  mainFields: ['module', 'main'],
  packages: 'external',
  entryPoints: [
    'src/index.ts',
    'src/engine.ts',
    'src/compiler.ts',
    'src/reading.ts',
    'src/words.ts',
    'src/ahead.ts',
    'src/adapters/logbook.ts',
    'src/adapters/exchange.ts',
    'src/adapters/fleet.ts',
    'src/adapters/editor.ts',
  ],
  outdir: 'dist',
  chunkNames: 'chunks/[name]-[hash]',
  splitting: true,
  plugins: [withoutBareImports],
};
