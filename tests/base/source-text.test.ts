/**
 * Lines and columns, for every kind of line end.
 */
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lineOf, positionOf, sourceText } from '../../src/base/source-text.js';

describe('positionOf', () => {
  test.each([
    [0, 1, 1],
    [2, 1, 3],
    [3, 2, 1],
    [6, 3, 1],
    [8, 4, 1],
    [99, 4, 2],
    [-1, 1, 1],
  ])('offset %i is at %i:%i', (offset, line, column) => {
    expect(positionOf(sourceText('t', 'ab\nc\r\ne\rf'), offset)).toEqual({ line, column });
  });

  test('counts as splitting the text into lines does', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom('a', '\n', 'é', '\u{1F69C}') }), fc.nat(), (text, at) => {
        const offset = Math.min(at, text.length);
        const before = text.slice(0, offset).split('\n');
        expect(positionOf(sourceText('t', text), offset)).toEqual({ line: before.length, column: (before.at(-1) ?? '').length + 1 });
      }),
    );
  });
});

test('lineOf gives a line without its end, and nothing for a line that is not there', () => {
  const source = sourceText('t', 'one\r\ntwo');
  expect([0, 1, 2, 3].map((line) => lineOf(source, line))).toEqual(['', 'one', 'two', '']);
});
