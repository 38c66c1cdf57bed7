/**
 * The search against brute force on random machines. The long run: `RUNS=200000 npx vitest run --config tests/vitest.config.ts
 * tests/access/optimal.property`.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { closedOrder, effectiveNeeds } from '../../src/access/effective-needs.js';
import { DEFAULT_CAPS } from '../../src/access/problem.js';
import { runSearch } from '../../src/access/search.js';
import { shareCosts } from '../../src/access/share-costs.js';
import { solve } from '../../src/access/solve.js';
import { costOf } from './oracle/cost-of.js';
import { randomProblem } from './oracle/random-problem.js';
import { rawDijkstra } from './oracle/raw-dijkstra.js';

const RUNS = Number(process.env['RUNS'] ?? 3000);

test('costs what brute force says, and the way told costs that', { timeout: RUNS * 20 }, () => {
  let [tried, solved] = [0, 0];
  fc.assert(
    fc.property(randomProblem({ parts: 4, positions: 3, needs: 6, places: 4 }), (problem) => {
      tried++;
      const outcome = solve(problem);
      const truth = rawDijkstra(problem);
      if (truth === null) {
        expect(outcome.kind).toBe('impossible');
        return;
      }
      if (outcome.kind !== 'optimal') throw new Error(`${outcome.kind}, but ${truth} s will do`);
      expect(outcome.seconds).toBe(truth);
      expect(costOf(problem, outcome.acts)).toBe(truth);
      solved++;
    }),
    { numRuns: RUNS },
  );
  expect(solved / tried).toBeGreaterThan(0.1);
});

// Small machines seldom need the patterns that share costs among them, so here nothing else is given.
test('the same with patterns that overlap, from the first state on', { timeout: RUNS * 20 }, () => {
  fc.assert(
    fc.property(randomProblem({ parts: 5, positions: 3, needs: 6, places: 3 }), (problem) => {
      if (closedOrder(problem.needs).some((before, need) => before.has(need))) return;
      const needs = effectiveNeeds(problem);
      const result = runSearch(problem, needs, shareCosts(problem, needs), { weight: 1, caps: DEFAULT_CAPS });
      const truth = rawDijkstra(problem);
      const always = problem.needs.reduce((sum, need) => sum + need.seconds, 0);
      expect(result.kind === 'found' ? result.cost + always : null).toBe(truth);
    }),
    { numRuns: Math.ceil(RUNS / 10) },
  );
});
