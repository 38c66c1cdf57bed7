/**
 * What a page pays for what it imports from the published files: bundled and minified by esbuild, then gzip.
 *
 * Limits stand a little above what was measured when they were set (docs/evidence.md), or at the goals where these are met: 8, 15 and 55 KB.
 * Lower them when the code gets smaller.
 */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { beforeAll, expect, test } from 'vitest';

const dist = fileURLToPath(new URL('../../dist/', import.meta.url));
beforeAll(() => {
  if (!existsSync(`${dist}engine.js`)) throw new Error('there is no dist/: run `npm run build` first');
});

async function bundle(contents: string): Promise<{ readonly text: string; readonly bytes: number }> {
  const { outputFiles } = await build({
    stdin: { contents, resolveDir: dist },
    bundle: true,
    minify: true,
    write: false,
    format: 'esm',
    platform: 'browser',
    legalComments: 'none',
    charset: 'utf8',
  });
  const text = outputFiles[0]?.text ?? '';
  return { text, bytes: gzipSync(text, { level: 9 }).length };
}

test.each([
  ["export { namesOf } from './engine.js'", 0.5],
  ["export { readEntries } from './engine.js'", 3.1],
  ["export { engineWith, intervals } from './engine.js'", 7.6],
  ["export { engineWith, intervals, calendar } from './engine.js'", 8],
  ["export { engineWith, intervals, calendar, readEntries, readRuleGraph } from './engine.js'", 18.9],
  ["export { engineWith, intervals, calendar, readEntries } from './engine.js'; export { graphReaderWith } from './reading.js'", 15.9],
  [
    "export { engineWith, intervals, calendar, readEntries } from './engine.js'; export { unprovedGraphReaderWith, sealedText } from './reading.js'",
    14.5,
  ],
  [
    "export { engineWith, intervals, calendar, readEntries } from './engine.js'; export { unprovedGraphReaderWith, sealedText, timing } from './reading.js'",
    15.1,
  ],
  ["export { readRuleGraph } from './engine.js'", 9.7],
  ["export { explain } from './engine.js'", 11.3],
  ["export { walkRound } from './engine.js'", 14.3],
  ["export { assess } from './engine.js'", 26.4],
  ["export { assess, readEntries, readRuleGraph } from './engine.js'", 37.2],
  ["export * from './engine.js'", 65.8],
  ["export { compile } from './index.js'", 79.9],
  ["export { assess, compile } from './index.js'", 104.9],
  ["export { compilerWith } from './compiler.js'", 47.1],
  ["export { engineWith, intervals, calendar } from './engine.js'; export { compilerWith } from './compiler.js'", 54.2],
  ["export { engineWith, intervals, calendar } from './engine.js'; export { compilerWith, examples } from './compiler.js'", 57],
])('%s: at most %d KB', async (contents, limit) => {
  const { text, bytes } = await bundle(contents);
  expect(text).toMatch(/export\s*\{/);
  expect(Math.ceil(bytes / 100) / 10, 'gzip, in thousands of bytes').toBeLessThanOrEqual(limit);
});

test('an engine of some kinds carries none of the others, and the whole one carries all', async () => {
  const words = ['due-within-allowance', 'goodThrough', 'marks-missed', 'consumption', 'stood-still', 'did you mean'];
  const { text } = await bundle("export { engineWith, intervals } from './engine.js'");
  expect(words.filter((word) => text.includes(word))).toEqual(['did you mean']);
  const whole = await bundle("export { assess } from './engine.js'");
  expect(words.filter((word) => !whole.text.includes(word))).toEqual([]);
});

test('a compiler of some parts carries none of the others, and the whole one carries all', async () => {
  const words = [
    'machineFact',
    'bandRules',
    'stepClauses',
    'From rest: ',
    'exampleItems',
    'placed-weekday',
    'The base has no task',
    'is not a word that fits here',
    'that nothing uses',
  ];
  const { text } = await bundle("export { compilerWith } from './compiler.js'");
  expect(words.filter((word) => text.includes(word))).toEqual([]);
  const whole = await bundle("export { compile } from './index.js'");
  expect(words.filter((word) => !whole.text.includes(word))).toEqual([]);
});

test('whoever only assesses carries neither explanations nor walk-rounds nor the checks of what comes in', async () => {
  const { text } = await bundle("export { assess } from './engine.js'");
  const others = ['duewright-explanation', 'duewright-walk-round', 'duewright-rule-graph', 'as YYYY-MM-DD', 'TextEncoder'];
  expect(others.filter((word) => text.includes(word))).toEqual([]);
  const whole = await bundle("export * from './engine.js'");
  expect(others.filter((word) => !whole.text.includes(word))).toEqual([]);
});
