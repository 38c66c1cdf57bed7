import { expect, it } from 'vitest';
import { inUnit } from '../../src/values/in-unit.js';

it.each([
  [200, 'g', 'kg', 0.2],
  [212, '°F', '°C', 100],
  [6.6, 'L', 'L', 6.6],
  [3, 'bales', 'bales', 3],
  [1, 'kg', 'L', null],
  [1, 'buckets', 'L', null],
  [1, 'L', 'buckets', null],
  [1, 'buckets', 'buckets', 1],
])('%d %s in %s: %j', (value, written, kept, found) => {
  expect(inUnit(value, written, kept)).toBe(found);
});
