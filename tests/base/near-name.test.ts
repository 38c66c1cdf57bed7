/**
 * Near names, against the plain definition of the distance.
 */
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nearName, nearNames, slipsBetween } from '../../src/base/near-name.js';

/** The definition (optimal string alignment), without any saving of work. */
function bySheerDefinition(a: string, b: string): number {
  if (a === '' || b === '') return a.length + b.length;
  const [restA, restB] = [a.slice(0, -1), b.slice(0, -1)];
  const swapped = a.length > 1 && b.length > 1 && a.at(-1) === b.at(-2) && a.at(-2) === b.at(-1);
  return Math.min(
    bySheerDefinition(restA, b) + 1,
    bySheerDefinition(a, restB) + 1,
    bySheerDefinition(restA, restB) + (a.at(-1) === b.at(-1) ? 0 : 1),
    ...(swapped ? [bySheerDefinition(a.slice(0, -2), b.slice(0, -2)) + 1] : []),
  );
}

describe('slipsBetween', () => {
  test('agrees with the definition', () => {
    const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 5 });
    fc.assert(
      fc.property(word, word, (a, b) => {
        expect(slipsBetween(a, b)).toBe(bySheerDefinition(a, b));
        expect(slipsBetween(a, b, 1)).toBe(Math.min(2, bySheerDefinition(a, b)));
      }),
      { numRuns: 150 },
    );
  });

  test.each([
    ['evry', 'every', 1],
    ['taks', 'task', 1],
    ['kitten', 'sitting', 3],
    ['', 'abc', 3],
  ])('%s to %s: %i', (a, b, slips) => {
    expect(slipsBetween(a, b)).toBe(slips);
  });
});

describe('nearNames', () => {
  test('gives the nearest first, equally near ones in the order given', () => {
    expect(nearNames('coolent', ['colony', 'coolant', 'coolest'])).toEqual(['coolant', 'coolest']);
  });

  test('does not take a short word for every other short word', () => {
    expect(nearNames('h', ['s', 'L'])).toEqual([]);
    expect(nearName('engine-oil', ['hydraulic-oil'])).toBeUndefined();
  });
});
