/**
 * Texts made to break a parser: each ends in diagnostics, quickly, and never in an exception.
 */
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from '../../src/syntax/parse.js';
import { allWords } from '../../src/syntax/tokens.js';

const head = 'schedule t "T" task a "A" ';

function codes(text: string): readonly string[] {
  return [...new Set(parse(text).diagnostics.map((each) => each.code))];
}

describe('a text made to break the parser', () => {
  test.each([
    ['100,000 parentheses', `${head}when ${'('.repeat(100_000)}`, ['DW102']],
    ['65 parentheses', `${head}when ${'( '.repeat(65)}a on${' )'.repeat(65)}`, ['DW102']],
    ['a long chain of `not`', `${head}when ${'not '.repeat(5_000)}a on`, ['DW102']],
    ['`not` and parentheses in turn', `${head}when ${'not ('.repeat(5_000)}a on`, ['DW102']],
    ['a long chain of `lesser of`', `${head}allow ${'lesser of '.repeat(5_000)} 5 h late`, ['DW102']],
    ['more than the limit', 'x'.repeat(262_145), ['DW101']],
    ['256 KiB of quotes', '"'.repeat(262_144), ['DW101']],
    ['3,900 quotes', '"'.repeat(3_900), ['DW110']],
    ['256 KiB of one name', 'x'.repeat(262_144), ['DW110']],
    ['256 KiB of backslashes in a text', `schedule t "${'\\'.repeat(262_000)}`, ['DW105']],
    ['256 KiB of NULs', '\0'.repeat(262_144), ['DW104', 'DW110']],
    ['lone halves of surrogate pairs', `${head}do "\ud800" reason "\udc00\udc00" \udbff`, ['DW104']],
    ['nothing', '', ['DW110']],
  ])('%s', (_, text, expected) => {
    const start = performance.now();
    expect([...codes(text)].sort()).toEqual(expected);
    expect(performance.now() - start).toBeLessThan(5_000);
  });

  test('64 levels are allowed', () => {
    expect(codes(`${head}when ${'( '.repeat(64)}a on${' )'.repeat(64)}`)).toEqual([]);
  });

  test('whole pairs of surrogates are characters like others', () => {
    expect(codes(`${head}do "\u{1F69C}"`)).toEqual([]);
  });

  test('the number of mistakes told is bounded, and the time with it', () => {
    const text = `${head}${'every x allow y '.repeat(480)}`;
    const start = performance.now();
    const { diagnostics } = parse(text);
    expect(diagnostics).toHaveLength(101);
    expect(diagnostics.filter((each) => each.code === 'DW119')).toHaveLength(1);
    expect(performance.now() - start).toBeLessThan(5_000);
  });

  test('limits are the caller’s to set', () => {
    expect(parse(head, 0, { limits: { size: 10 } }).diagnostics.map((each) => each.code)).toEqual(['DW101']);
    expect(parse(`${head}when (a on)`, 0, { limits: { nesting: 0 } }).diagnostics.map((each) => each.code)).toEqual(['DW102']);
  });
});

describe('any text at all', () => {
  const word = fc.constantFrom(
    ...allWords(),
    '"',
    '"T"',
    '(',
    ')',
    ',',
    '1',
    '2 h',
    '%',
    '2026-02-14',
    '07:30',
    '#',
    '\n',
    'x',
    "day's",
    'May',
    '°C',
    '\u202e',
    'Ä',
  );

  test('gives the same result twice, in reading order, with places inside the text', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.array(word, { maxLength: 60 }).map((all) => `schedule t "T" ${all.join(' ')}`),
          fc.string({ unit: 'binary' }),
        ),
        (text) => {
          const result = parse(text);
          expect(parse(text)).toEqual(result);
          const starts = result.diagnostics.map((each) => each.at.start);
          expect(starts).toEqual([...starts].sort((a, b) => a - b));
          for (const { at, message, fixes } of result.diagnostics) {
            expect(at.start).toBeLessThanOrEqual(at.end);
            expect(at.end).toBeLessThanOrEqual(text.length);
            expect(message).toMatch(/^[^\n]+\.$/);
            for (const fix of fixes) for (const edit of fix.edits) expect(edit.at.end).toBeLessThanOrEqual(text.length);
          }
        },
      ),
      { numRuns: 400, seed: 11 },
    );
  });
});
