/**
 * How many states the search looks at. The answer would be the same without its bounds, only later: what they save is held here, so that a bound
 * that has become weaker is noticed. Better bounds may lower these figures; nothing should raise them unawares.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { AccessProblem } from '../../src/access/problem.js';
import { solve } from '../../src/access/solve.js';
import { randomProblem } from './oracle/random-problem.js';
import { blocksWorld, gripper, hanoi, riverCrossing } from './published-instances.js';

test.each<[string, AccessProblem, number]>([
  ['Gripper with 2 balls', gripper(2), 5],
  ['Gripper with 4 balls', gripper(4), 40],
  ['Gripper with 6 balls', gripper(6), 244],
  ['the Sussman anomaly', blocksWorld({ a: 'table', b: 'table', c: 'a' }, { a: 'b', b: 'c' }), 8],
  ['the Tower of Hanoi with 3 disks', hanoi(3), 7],
  ['the Tower of Hanoi with 5 disks', hanoi(5), 135],
  ['wolf, goat and cabbage', riverCrossing(), 23],
])('%s takes a look at no more states than so many', (_, problem, most) => {
  expect(solve(problem).expanded).toBeLessThanOrEqual(most);
});

test.each([
  [{ parts: 4, positions: 3, needs: 6, places: 4 }, 122],
  [{ parts: 6, positions: 3, needs: 8, places: 0 }, 98],
  [{ parts: 3, positions: 3, needs: 4, places: 14 }, 136],
])('random machines of %j take no more looks in all than so many', (size, most) => {
  const machines = fc.sample(randomProblem(size), { numRuns: 250, seed: 20_260_214 });
  expect(machines.reduce((sum, machine) => sum + solve(machine).expanded, 0)).toBeLessThanOrEqual(most);
});
