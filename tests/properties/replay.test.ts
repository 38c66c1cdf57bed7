/** Explanations keep their five properties (docs/meaning.md §9), over random schedules and histories. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyReplay, PROPERTIES } from './replay.js';

// The same situations each time, so that the suite is red only for what changed. Others are tried by the long run, `npm run test:wide`.
const parameters = { numRuns: Number(process.env['DUEWRIGHT_RUNS'] ?? 100), seed: Number(process.env['DUEWRIGHT_SEED'] ?? 20_260_511) };

describe('an explanation', () => {
  test.each(Object.entries(PROPERTIES))('is %s', (_, faultsOf) => {
    fc.assert(
      fc.property(anyReplay, (given) => {
        expect(faultsOf(given)).toEqual([]);
      }),
      parameters,
    );
  });
});
