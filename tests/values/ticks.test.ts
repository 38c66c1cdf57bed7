import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { durationText, numberText } from '../../src/values/number-text.js';
import { parseTicks, ticksOf, unitsOf } from '../../src/values/ticks.js';

describe('ticks', () => {
  test.each([
    ['0.05', 1800],
    ['1299.95', 46_798_200],
    ['0.1', 3600],
    ['-0.05', -1800],
    ['0', 0],
    ['-0', 0],
    ['0.00001', 0],
    ['0.0000139', 1],
  ])('%s is %i ticks', (text, ticks) => {
    expect(parseTicks(text)).toBe(ticks);
    expect(ticksOf(Number(text)) + 0).toBe(ticks);
  });
  test.each(['', '.5', '5.', '1e3', '1,5', 'NaN', '999999999999999', ' 1', '1 '])('%j is refused', (text) => {
    expect(parseTicks(text)).toBeNull();
  });
  test('every twentieth of an hour goes there and back', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 2_000_000 }),
        (twentieths) => ticksOf(twentieths / 20) === twentieths * 1800 && unitsOf(twentieths * 1800) === twentieths / 20,
      ),
    );
  });
});

describe('numbers for people', () => {
  test.each([
    [1299.9, '1299.9'],
    [1300, '1300'],
    [0.1 + 0.2, '0.3'],
    [-0.001, '0'],
    [-2.5, '-2.5'],
    [1e21, '1e+21'],
    [-Infinity, '-Infinity'],
    [100, '100'],
  ])('%d is written %s', (value, text) => {
    expect(numberText(value)).toBe(text);
  });
  test('durations', () => {
    expect([0, 600, 36000, 48600, -36600].map(durationText)).toEqual(['0 min', '1 min', '1 h', '1 h 21 min', '-1 h 1 min']);
  });
});
