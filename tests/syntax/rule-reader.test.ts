/**
 * Our own reader of rules against Chevrotain, which reads the same grammar: the same trees, the same mistakes, in the same words.
 */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { allWords } from '../../src/syntax/tokens.js';
import { readCases } from './case-file.js';
import { ourReading, readingOnChevrotain } from './on-chevrotain.js';

const ours = await ourReading();
const theirs = await readingOnChevrotain();

const folder = new URL('../cases/syntax/', import.meta.url).pathname;
const cases = readdirSync(folder).flatMap((name) => readCases(folder + name).map(({ input }) => input));
const schedules = ['orchard-tractor', 'wood-chipper', 'irrigation-pump'].map((name) => readFileSync(`schedules/${name}.due`, 'utf8'));

/** Words, numbers, texts and signs, each with the space after it. */
const pieces = (text: string): string[] => text.match(/(?:"[^"\n]*"|#[^\n]*|[^\s"]+)\s*/g) ?? [];

test('they are two', () => {
  expect(theirs.machinery().grammar).toHaveProperty('performSelfAnalysis');
  expect(ours.machinery().grammar).not.toHaveProperty('performSelfAnalysis');
});

test('the example schedules and the golden cases are read alike', () => {
  for (const text of [...schedules, ...cases]) expect(ours.parse(text)).toEqual(theirs.parse(text));
});

test('and so are texts with any of their words left out, doubled, or replaced', () => {
  const change = fc.record({
    at: fc.nat(),
    how: fc.constantFrom('left out', 'doubled', 'replaced'),
    word: fc.constantFrom(...allWords(), '12', '"t"', '(', ','),
  });
  const edited = fc
    .tuple(fc.constantFrom(...cases, ...schedules), fc.array(change, { minLength: 1, maxLength: 4 }))
    .map(([text, changes]) => {
      const words = pieces(text);
      for (const { at, how, word } of changes) {
        const index = at % words.length;
        const old = words[index] ?? '';
        words.splice(index, 1, ...(how === 'left out' ? [] : how === 'doubled' ? [old, old] : [`${word} `]));
      }
      return words.join('');
    });
  fc.assert(
    fc.property(edited, (text) => {
      expect(ours.parse(text)).toEqual(theirs.parse(text));
    }),
    { numRuns: Number(process.env['DUEWRIGHT_RUNS'] ?? 300) },
  );
});
