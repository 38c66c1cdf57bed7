/**
 * Writes docs/diagnostics.md from the catalogue; with `--check` only says whether it is current.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = new URL('../', import.meta.url);
const page = fileURLToPath(new URL('docs/diagnostics.md', root));

async function loadCatalogue() {
  const entry = fileURLToPath(new URL('src/diagnostics/catalogue.ts', root));
  const { outputFiles } = await build({ entryPoints: [entry], bundle: true, write: false, format: 'esm', platform: 'neutral' });
  const module = await import(`data:text/javascript;base64,${Buffer.from(outputFiles[0].text).toString('base64')}`);
  return module.catalogue;
}

/** @returns {Promise<string>} the page */
export async function diagnosticsPage() {
  const entries = [...(await loadCatalogue())].sort((a, b) => (a.code < b.code ? -1 : 1));
  const parts = [
    '# What a diagnostic means',
    'Made from `src/diagnostics/catalogue/` by `.scripts/diagnostics-doc.mjs`; do not edit. Codes keep their meaning for ever. An **error** keeps a schedule from being compiled; a **warning** is most likely a mistake; a **note** is worth knowing.',
    [
      '| code | severity | what |',
      '| --- | --- | --- |',
      ...entries.map(({ code, severity, title }) => `| [${code}](#${code.toLowerCase()}) | ${severity} | ${cell(title)} |`),
    ].join('\n'),
    ...entries.map(section),
  ];
  return `${parts.join('\n\n')}\n`;
}

function section({ code, severity, title, explanation, wrong, right }) {
  return [`## ${code}`, `**${title}** (${severity})`, explanation, 'Draws it:', fence(wrong), 'Put right:', fence(right)].join('\n\n');
}

function fence(text) {
  return `\`\`\`\n${text}\n\`\`\``;
}

function cell(text) {
  return text.replaceAll('|', '\\|');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const text = await diagnosticsPage();
  const stale = readFileSync(page, { encoding: 'utf8', flag: 'a+' }) !== text;
  if (!process.argv.includes('--check')) writeFileSync(page, text);
  else if (stale) {
    console.error('docs/diagnostics.md is stale: run `node .scripts/diagnostics-doc.mjs`');
    process.exitCode = 1;
  }
}
