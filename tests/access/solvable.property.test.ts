/** The search, whole and in pieces, against brute force on machines that have a way. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { AccessProblem } from '../../src/access/problem.js';
import { solve } from '../../src/access/solve.js';
import { costOf } from './oracle/cost-of.js';
import { rawDijkstra } from './oracle/raw-dijkstra.js';
import { solvableProblem } from './oracle/solvable-problem.js';

const RUNS = Number(process.env['RUNS'] ?? 400);

function isOptimal(problem: AccessProblem): void {
  const truth = rawDijkstra(problem);
  const outcome = solve(problem);
  if (truth === null) return expect(outcome.kind).toBe('impossible');
  expect(outcome).toMatchObject({ kind: 'optimal', seconds: truth });
  expect(costOf(problem, outcome.kind === 'optimal' ? outcome.acts : [])).toBe(truth);
}

describe('the cheapest way', () => {
  test('where places and orders count', () => {
    fc.assert(fc.property(solvableProblem({ parts: 3, positions: 3, needs: 5, places: 3 }), isOptimal), { numRuns: RUNS });
  });

  test('where stances alone do', () => {
    fc.assert(fc.property(solvableProblem({ parts: 5, positions: 3, needs: 3, places: 0 }), isOptimal), { numRuns: RUNS });
  });
});
