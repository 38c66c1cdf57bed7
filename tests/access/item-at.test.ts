/** What our own code looks up by index is there, or the program ends. */
import { expect, test } from 'vitest';
import { itemAt } from '../../src/access/item-at.js';

test('an item is what stands at the index, falsy or not', () => {
  expect([0, 1, 2].map((index) => itemAt(['a', '', 'c'], index))).toEqual(['a', '', 'c']);
  expect(itemAt(Int32Array.of(7, 0), 1)).toBe(0);
});

test.each([-1, 2, 3, 0.5, Number.NaN])('nothing stands at %s of three, the last of which is null', (index) => {
  expect(() => itemAt(['a', 'b', null], index)).toThrow(new RangeError(`nothing stands at ${index} of 3`));
});
