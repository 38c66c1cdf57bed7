/**
 * Builds the pages: the script that every field page carries, and the playground as one file.
 *
 * Both must work from disk, so that nothing in them may be fetched: scripts, styles and samples are put into the page itself.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { noticing } from './notices.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));

const script = {
  absWorkingDir: root,
  bundle: true,
  format: 'iife',
  platform: 'browser',
  target: ['chrome109', 'firefox115', 'safari16.4'],
  minify: true,
  write: false,
  metafile: true,
  plugins: [noticing],
  legalComments: 'none',
  logLevel: 'warning',
  charset: 'utf8',
};

/** One bundled script: its text, safe to stand inside `<script>`, and the files that went into it. */
async function bundle(entryPoint) {
  const { metafile, outputFiles } = await build({ ...script, entryPoints: [entryPoint] });
  const text = outputFiles[0].text.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');
  return { text, inputs: Object.keys(metafile.inputs) };
}

/** The script of the field page, with what went into it. */
export function fieldBundle() {
  return bundle('src/adapters/page/field/main.ts');
}

/** Its text. */
export async function fieldScript() {
  return (await fieldBundle()).text;
}

/** The files that lie on the playground's desk when it opens: the invented orchard tractor with its parts, attachments and logbook. */
function sampleDesk() {
  const text = (path) => readFileSync(`${root}schedules/${path}`, 'utf8');
  const [main, logbook] = ['orchard-tractor.due', 'orchard-tractor.logbook.jsonl'];
  const paths = [main, 'parts/three-cylinder-diesel.due', 'attachments/flail-mower.due', 'attachments/pallet-forks.due', logbook];
  return { files: Object.fromEntries(paths.map((path) => [path, text(path)])), main, logbook };
}

/** What makes the page, and compiles the sample for it. */
const template =
  "export { compile } from './src/index.js'; export { playgroundPage } from './src/adapters/page/playground/playground-page.js';";

function moduleOf(text) {
  return `data:text/javascript;base64,${Buffer.from(text).toString('base64')}`;
}

/** The playground, whole. */
export async function playground() {
  const folder = 'src/adapters/page/playground';
  const [page, worker, maker] = await Promise.all([
    bundle(`${folder}/main.ts`),
    bundle(`${folder}/worker.ts`),
    build({ ...script, stdin: { contents: template, resolveDir: root }, format: 'esm', platform: 'node', target: 'node20' }),
  ]);
  const { compile, playgroundPage } = await import(moduleOf(maker.outputFiles[0].text));
  const desk = sampleDesk();
  const { graph } = compile(desk.main, (path) => desk.files[path]);
  return playgroundPage({ desk: { ...desk, graph }, script: page.text, worker: worker.text });
}

/** Writes `pages/field-page.js` and `playground.html` into a folder, whose name ends with a slash. */
export async function buildPages(dist) {
  mkdirSync(`${dist}pages`, { recursive: true });
  const [field, page] = await Promise.all([fieldScript(), playground()]);
  writeFileSync(`${dist}pages/field-page.js`, field);
  writeFileSync(`${dist}playground.html`, page);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await buildPages(`${root}dist/`);
