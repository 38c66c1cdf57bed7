/**
 * The engine against the judge (tests/judge), which was written apart from it: they must agree on every state, due point and verdict, at every
 * moment that matters. The long run is `node .scripts/differential.mjs`.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyTrial, disagreementsOf } from './differential.js';

const RUNS = Number(process.env['DUEWRIGHT_RUNS'] ?? 60);
// The same trials each time, so that the suite is red only for what changed; other seeds are tried by the long run.
const SEED = Number(process.env['DUEWRIGHT_SEED'] ?? 20_260_511);
const seconds = RUNS > 60 ? 3600 : 40;

test(
  'two evaluators, written apart, agree',
  () => {
    const given = { numRuns: RUNS, seed: SEED };
    const agree = fc.property(anyTrial, (trial) => {
      expect(disagreementsOf(trial)).toEqual([]);
    });
    fc.assert(agree, { ...given, interruptAfterTimeLimit: seconds * 500 });
  },
  seconds * 1000,
);
