/**
 * Our splitter against Chevrotain's lexer with the same patterns in the same order.
 */
import { createToken, Lexer } from 'chevrotain';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Splitter } from '../../src/syntax/split-tokens.js';
import { allWords, makeVocabulary } from '../../src/syntax/tokens.js';
import { unitSpellings } from '../../src/values/units.js';

const { patterns } = makeVocabulary();
const splitter = new Splitter(patterns);
const gap = createToken({ name: 'Gap', pattern: /[ \t\r\n]+/, group: Lexer.SKIPPED });
const lexer = new Lexer(
  [gap, ...patterns.map(({ kind, written }) => createToken({ name: kind.name, pattern: new RegExp(written.source) }))],
  { positionTracking: 'onlyOffset', ensureOptimizations: false },
);

const sign = fc.constantFrom(...' \t\r\n"\'\\#(),%.-:+<>=;{}°²³µ·«»„“”‘’0123456789aAdDmNäÄжsVLK\u00a0\u200b🚜'.split(''));
const word = fc.constantFrom(
  ...allWords(),
  ...unitSpellings(),
  '2026-03-02',
  '07:30',
  "day's",
  'March',
  '12,5',
  '"text \\" more"',
  '# said',
);
const text = fc.array(fc.oneof(sign, word, fc.string({ maxLength: 3 })), { maxLength: 40 }).map((parts) => parts.join(''));

test('any text is split where Chevrotain splits it', () => {
  fc.assert(
    fc.property(text, (written) => {
      const { tokens, errors } = lexer.tokenize(written);
      const ours = splitter.split(written);
      expect(ours.tokens.map((each) => [each.tokenType.name, each.startOffset, each.image])).toEqual(
        tokens.map((each) => [each.tokenType.name, each.startOffset, each.image]),
      );
      expect(ours.unreadable).toEqual(errors.map(({ offset, length }) => ({ offset, length })));
    }),
    { numRuns: Number(process.env['DUEWRIGHT_RUNS'] ?? 2000) },
  );
});
