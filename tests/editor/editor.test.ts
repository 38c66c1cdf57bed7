import { describe, expect, test } from 'vitest';
import { compile } from '../../src/compile/compile.js';
import { runExamples } from '../../src/examples/run-examples.js';
import { foldsOf } from '../../src/editor/folding.js';
import { hover } from '../../src/editor/hover.js';
import { lensesOf } from '../../src/editor/lenses.js';
import { definitionAt } from '../../src/editor/occurrences.js';
import { quickFixes, sureFixes } from '../../src/editor/quick-fixes.js';
import { referencesTo } from '../../src/editor/references-to.js';
import { rename } from '../../src/editor/rename.js';
import { semanticTokens } from '../../src/editor/semantic-tokens.js';
import { symbolsOf } from '../../src/editor/symbols.js';
import { textOf, type EditorView } from '../../src/editor/view.js';
import { parse } from '../../src/syntax/parse.js';
import { done, history, moment } from '../support/history.js';
import { atCursor, machine, mower } from './at-cursor.js';

/** The view with the cursor before the n-th occurrence of some words. */
function at(words: string, nth = 1, text = machine): { readonly view: EditorView; readonly offset: number } {
  let start = -1;
  for (let count = 0; count < nth; count += 1) start = text.indexOf(words, start + 1);
  expect(start).toBeGreaterThanOrEqual(0);
  return atCursor(`${text.slice(0, start)}|${text.slice(start)}`);
}

const files: Readonly<Record<string, string>> = { 'test.due': machine, 'mower.due': mower };
const compiled = compile('test.due', (path) => files[path]);

describe('definitions', () => {
  test.each([
    ['oil-level\n', 1, 'test.due', 'oil-level "Check'],
    ['engine or', 1, 'test.due', 'engine "Hour meter"'],
    ['rotor', 1, 'mower.due', 'rotor "Rotor hours"'],
    ['mower.rotor', 1, 'test.due', 'mower "Mower"'],
  ])('%s', (words, nth, file, declared) => {
    const { view, offset } = at(words, nth);
    const found = definitionAt(view, offset);
    const source = view.checked.sources[found?.file ?? -1];
    expect(source?.name).toBe(file);
    expect(source?.text.slice(found?.start)).toMatch(new RegExp(`^${declared}`));
  });

  test('there is none where no name stands', () => {
    const { view, offset } = at('whichever');
    expect(definitionAt(view, offset)).toBeUndefined();
  });
});

test('references are found in every file, the declaration among them', () => {
  const { view, offset } = at('rotor');
  const found = referencesTo(view, offset).map(
    ({ file, start, end }) => `${view.checked.sources[file]?.name} ${view.checked.sources[file]?.text.slice(start - 3, end)}`,
  );
  expect(found).toEqual(['test.due er.rotor', 'mower.due er rotor', 'mower.due of rotor']);
  expect(referencesTo(view, offset, false)).toHaveLength(2);
});

describe('renaming', () => {
  function renamed(words: string, name: string): Readonly<Record<string, string>> | string {
    const { view, offset } = at(words);
    const renaming = rename(view, offset, name);
    if ('refused' in renaming) return renaming.refused;
    const texts = Object.fromEntries(view.checked.sources.map((source) => [source.name, source.text]));
    for (const edit of [...renaming.edits].reverse()) {
      const path = view.checked.sources[edit.at.file]?.name ?? '';
      const text = texts[path] ?? '';
      texts[path] = text.slice(0, edit.at.start) + edit.text + text.slice(edit.at.end);
    }
    return texts;
  }

  test.each([
    ['engine "Hour', 'hours'],
    ['oil-level "Check', 'dip'],
    ['mower "Mower', 'flail'],
    ['rotor', 'spindle'],
    ['oil "Engine oil dip', 'engine'],
  ])('%s to %s', (words, name) => {
    const texts = renamed(words, name);
    if (words.startsWith('oil "')) return expect(texts).toMatch(/already/);
    if (typeof texts === 'string') throw new Error(texts);
    const again = compile('test.due', (path) => texts[path]);
    expect(again.diagnostics.map(({ message }) => message)).toEqual(compiled.diagnostics.map(({ message }) => message));
    expect(again.model?.references.length).toBe(compiled.model?.references.length);
    expect(again.model?.references.every(({ definition }) => definition !== undefined)).toBe(true);
    expect(texts['test.due']).not.toBe(machine);
  });

  test.each([
    ['every', /word of the language/],
    ['Engine', /small letters/],
    ['a.b', /small letters/],
    ['distance', /already/],
  ])('to %s is refused', (name, why) => {
    expect(renamed('engine "Hour', name)).toMatch(why);
  });
});

describe('hovering', () => {
  test('a task says what it means, and where it stands by the logbook', () => {
    const { view, offset } = at('oil-change "Change');
    const entries = history(
      ['2026-03-02', done('oil-change', { engine: 1200 })],
      ['2026-05-01', { kind: 'reading', meters: { engine: 1250 } }],
    );
    const found = hover(view, offset, compiled.graph, { entries, now: moment('2026-05-02') });
    expect(found?.paragraphs[0]).toBe('Change the oil: a task.');
    expect(found?.paragraphs[1]).toMatch(/^Due every 100 h of engine.*12 months.*\.$/);
    expect(found?.paragraphs.at(-1)).toMatch(/^By the logbook beside it: .*(1300|50 h)/);
  });

  test('without a compiled schedule it says that it cannot be told', () => {
    const { view, offset } = at('oil-change "Change');
    expect(hover(view, offset, null)?.paragraphs.at(-1)).toMatch(/cannot be told/);
  });

  test.each([
    ['coolant below', /gauge that reads °C, with the bands normal, high/],
    ['oil "Engine oil dip', /dipstick, 1.2 L from low to full/],
    ['refit happened', /A wheel was refitted: an event/],
    ['cover closed', /moving part that can be closed, open/],
  ])('%s', (words, said) => {
    const { view, offset } = at(words);
    expect(hover(view, offset, compiled.graph)?.paragraphs[0]).toMatch(said);
  });

  test('a word of the language shows an example', () => {
    const { view, offset } = at('covers');
    expect(hover(view, offset, compiled.graph)?.example).toBe('covers oil-level');
  });
});

test('the outline has every declaration, with its title', () => {
  const { file } = parse(machine);
  if (file === null) throw new Error('unreadable');
  const symbols = symbolsOf(file);
  expect(symbols).toHaveLength(file.declarations.length + 1);
  expect(symbols[0]).toMatchObject({ name: 'small-tractor', kind: 'header' });
  expect(symbols.find(({ name }) => name === 'oil-change')).toMatchObject({ kind: 'task', detail: 'Change the oil' });
  for (const { at: whole, selection } of symbols) expect(selection.start >= whole.start && selection.end <= whole.end).toBe(true);
});

test('declarations and runs of comments fold', () => {
  const text = '# one\n# two\npart a "A"\n  language 1 # three\n# four\n\n# five\n# six\nduty b "B"\ntask c "C"\n  every 1 days\n';
  const { file } = parse(text);
  if (file === null) throw new Error('unreadable');
  const folds = foldsOf(file, text).map(({ at: where, kind }) => `${kind}: ${text.slice(where.start, where.end).replace(/\s+/g, ' ')}`);
  expect(folds).toEqual([
    'declaration: part a "A" language 1',
    'declaration: task c "C" every 1 days',
    'comment: # one # two',
    'comment: # five # six',
  ]);
});

test('every word has its sort, and what is declared is marked', () => {
  const { view } = atCursor(`|${machine}`);
  const text = textOf(view);
  const tokens = semanticTokens(view);
  const sortOf = (words: string, word: string): unknown => {
    const start = text.indexOf(words) + words.indexOf(word);
    return tokens.find((token) => token.start === start)?.sort;
  };
  expect(sortOf('every 100 h of engine', 'every')).toBe('keyword');
  expect(sortOf('every 100 h of engine', '100')).toBe('number');
  expect(sortOf('every 100 h of engine', 'h')).toBe('unit');
  expect(sortOf('every 100 h of engine', 'engine')).toBe('meter');
  expect(sortOf('of mower.rotor', 'mower')).toBe('attachment');
  expect(sortOf('of mower.rotor', 'rotor')).toBe('meter');
  expect(sortOf('"Top up"', '"')).toBe('text');
  expect(sortOf('2026-05-12', '2026')).toBe('date');
  expect(tokens.filter(({ declares }) => declares)).toHaveLength(
    view.checked.model?.definitions.filter(({ at: { file } }) => file === 0).length ?? -1,
  );
  for (const [index, token] of tokens.entries()) expect(token.start).toBeGreaterThanOrEqual(tokens[index - 1]?.end ?? 0);
});

test('fixes are offered where their diagnostic stands, the surest first', () => {
  const { view, offset } = atCursor(`${machine}task x "X"\n  evry 100 h of eng|ne\n`);
  const titles = quickFixes(view, offset, offset).map(({ fix }) => fix.title);
  expect(titles).toContain('Write `engine`.');
  expect(quickFixes(view, offset - 16, offset - 15).map(({ fix }) => fix.title)).toEqual(['Write `every`']);
  expect(sureFixes(view).map(({ title }) => title)).toEqual(['Write `every`']);
});

test('above each example stands whether it holds', () => {
  const wrong = machine.replace('expect oil-change due', 'expect oil-change clear');
  const broken = compile('test.due', (path) => (path === 'test.due' ? wrong : files[path]));
  expect(lensesOf(compiled, runExamples(compiled)).map(({ words }) => words)).toEqual(['holds']);
  expect(lensesOf(broken, runExamples(broken))).toMatchObject([
    { holds: false, words: expect.stringMatching(/line \d+: oil-change is due, not clear$/) as unknown },
  ]);
  expect(lensesOf(compiled, null)).toMatchObject([{ holds: null }]);
});
