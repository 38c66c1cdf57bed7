/** What an observation says that it rests on is all that it rests on: who reads its entries need not look into its numbers. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { assess } from '../../src/assess/assess.js';
import { anyTrial } from '../properties/differential.js';

test('the entries of a limit and of its shares are among those of the observation', () => {
  fc.assert(
    fc.property(anyTrial, ({ graph, entries, looks }) => {
      for (const { now, intent } of looks.slice(0, 4)) {
        for (const { limit, shares = [], entries: own } of Object.values(assess(graph, entries, now, { intent }).record).flat()) {
          const rests = [limit?.base?.entries ?? [], limit?.now?.entries ?? [], shares.flatMap((share) => share.entries)].flat();
          expect(own).toEqual(expect.arrayContaining(rests));
        }
      }
    }),
    { numRuns: 60 },
  );
});
