/**
 * The search against a general-purpose solver (HiGHS): the same question as an integer program, one act a slot. With as many slots
 * as the plan has acts, and some to spare, the two optima must agree.
 */
import fc from 'fast-check';
import highsLoader from 'highs';
import { expect, test } from 'vitest';
import type { AccessProblem } from '../../src/access/problem.js';
import { solve } from '../../src/access/solve.js';
import { milpText } from './oracle/milp-text.js';
import { randomProblem } from './oracle/random-problem.js';

const SLOTS = 8;
/** How many machines are compared; the long run: `MACHINES=1000`. */
const MACHINES = Number(process.env['MACHINES'] ?? 60);
// The package is CommonJS whose types say `export default`.
const load = highsLoader as unknown as (typeof highsLoader)['default'];

test('agrees with HiGHS on small machines', { timeout: 120_000 + MACHINES * 2000 }, async () => {
  const highs = await load();
  let [compared, ours, theirs] = [0, 0, 0];
  const small = fc.sample(randomProblem({ parts: 3, positions: 3, needs: 3, places: 0 }), {
    numRuns: Math.ceil(MACHINES * 6.7),
    seed: 20260214,
  });
  for (const random of small) {
    // One box each, so that a condition is one row.
    const one = (set: AccessProblem['nevers'][number]) => set.slice(0, 1);
    const problem: AccessProblem = {
      ...random,
      moves: random.moves.map((move) => ({ ...move, during: one(move.during) })),
      needs: random.needs.map((need) => ({ ...need, stance: one(need.stance) })),
      nevers: random.nevers.map(one),
    };
    const before = performance.now();
    const outcome = solve(problem);
    ours += performance.now() - before;
    if (outcome.kind !== 'optimal' || outcome.acts.length === 0 || outcome.acts.length > SLOTS || compared >= MACHINES) continue;
    const start = performance.now();
    const answer = highs.solve(milpText(problem, SLOTS));
    theirs += performance.now() - start;
    expect(answer.Status).toBe('Optimal');
    expect(Math.round(answer.ObjectiveValue)).toBe(outcome.seconds);
    compared++;
  }
  expect(compared).toBeGreaterThan(MACHINES * 0.6);
  console.log(
    `${compared} machines: HiGHS took ${(theirs / compared).toFixed(1)} ms each, the search ${(ours / small.length).toFixed(2)} ms`,
  );
});
