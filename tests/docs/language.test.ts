import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { compile } from '../../src/index.js';
import { UNITS, unitSpellings } from '../../src/values/units.js';
import { blocksOf, languagePage, pageSchedule } from './language-examples.js';

const markdown = languagePage();
const { text, files } = pageSchedule(markdown);
const grammar = readFileSync(fileURLToPath(new URL('../../grammar/duewright.ebnf', import.meta.url)), 'utf8');

/** Errors, each with the words it points at: what a reader of a failing test needs. */
function errorsOf(name: string): readonly string[] {
  const sources = new Map([...files, ['page.due', text]]);
  const result = compile(name, (path) => sources.get(path));
  return result.diagnostics
    .filter(({ severity }) => severity === 'error')
    .map(({ code, message, at }) => `${code} ${message} | ${result.sources[at.file]?.text.slice(at.start, at.end) ?? ''}`);
}

describe('docs/language.md', () => {
  test('has its examples, and the page put together is one schedule', () => {
    expect(blocksOf(markdown).length).toBeGreaterThan(25);
    expect(errorsOf('page.due')).toEqual([]);
  });

  test.each([...files.keys()].filter((name) => !name.startsWith('parts/')))('%s compiles', (name) => {
    expect(errorsOf(name)).toEqual([]);
  });

  test('a mistake in an example would be found', () => {
    const broken = pageSchedule(markdown.replace('every 10 h of engine\n', 'every 10 h of enigne\n'));
    const result = compile('page.due', (path) => (path === 'page.due' ? broken.text : broken.files.get(path)));
    expect(result.graph).toBeNull();
    expect(result.diagnostics.map(({ message }) => message).join()).toContain('enigne');
  });

  test('every word of the grammar stands in an example', () => {
    const examples = blocksOf(markdown)
      .map((block) => block.text)
      .join('\n')
      .replace(/"[^"\n]*"/g, '""');
    const words = new Set(examples.match(/[a-zA-Z][a-zA-Z'-]*/g));
    const missing = [...wordsOf(grammar)].filter((word) => !words.has(word));
    expect(missing).toEqual([]);
  });
});

test('docs/language.md lists every unit in every spelling', () => {
  const rows = markdown.slice(markdown.indexOf('| kind | units')).split('\n\n')[0] ?? '';
  expect(unitSpellings().filter((each) => !rows.includes(`\`${each}\``))).toEqual([]);
  expect(rows.split('\n').length - 2).toBe(new Set(UNITS.map(({ dimension }) => dimension)).size);
});

/** The quoted words of the grammar that are made of letters, months left out: any of them stands for all. */
function wordsOf(ebnf: string): ReadonlySet<string> {
  const productions = ebnf.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^(Month|UnitSign|Name)\s+::=[^\n]*\n(?:\s+\|[^\n]*\n)*/gm, '');
  return new Set([...productions.matchAll(/"([a-z][a-z']*)"/g)].map(([, word = '']) => word));
}
