import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { folded, lengthFolding } from '../../src/compile/folded.js';

describe('words, folded', () => {
  test.each([
    ['every 50 h', 'every 50 h'],
    ['  every 50 h ', 'every 50 h'],
    ['every\n   50\th', 'every 50 h'],
    ['every  50 h', 'every 50 h'],
    ['every # often\n  50 h', 'every 50 h'],
    ['every 50 h # often', 'every 50 h'],
    ['# often\nevery', 'every'],
    ['task "a  b" x', 'task "a  b" x'],
    ['task "# no" # yes\n x', 'task "# no" x'],
    ['task "say \\"  hi\\" "  x', 'task "say \\"  hi\\" " x'],
    ['task ""  x', 'task "" x'],
    ['task "a b"  "c  d"  x', 'task "a b" "c  d" x'],
    ['', ''],
    ['   ', ''],
  ])('of %j are %j', (text, words) => {
    expect(folded(text)).toBe(words);
  });

  test.each([
    ['every  50 h # often', 'every 50', 9],
    ['every  50 h # often', 'every 50 h', 11],
    ['"a  b"\n c d', '"a  b" c', 9],
    ['a b', 'x', 3],
    ['ab c', 'ab', 2],
  ])('in %j come to %j after so many signs', (text, words, length) => {
    expect(lengthFolding(text, words)).toBe(length);
  });

  test('are the words with one space between, and are found again where they stand', () => {
    const word = fc.constantFrom('every', '50', '°C', '"a  # b"', '"\\" "', '""', ',', '(');
    const gap = fc.constantFrom(' ', '\n', '  ', ' # a "comment"\n', '\t\t', '\r\n');
    fc.assert(
      fc.property(fc.array(fc.tuple(word, gap), { minLength: 1, maxLength: 8 }), (pairs) => {
        const words = pairs.map(([each]) => each).join(' ');
        const text = pairs.map(([each, space]) => `${each}${space}`).join('');
        expect(folded(text)).toBe(words);
        const last = pairs.at(-1)?.[1] ?? '';
        expect(lengthFolding(`${text}and more`, words)).toBe(text.length - last.length);
      }),
    );
  });
});
