/** Optima from the planning and routing literature, stated through the same engine as a machine's walk-round. */
import { describe, expect, test } from 'vitest';
import { solve } from '../../src/access/solve.js';
import { costOf } from './oracle/cost-of.js';
import {
  blocksWorld,
  eightPuzzle,
  gripper,
  hanoi,
  missionariesAndCannibals,
  riverCrossing,
  TOWNS,
  travellingSalesman,
} from './published-instances.js';
import type { AccessProblem } from '../../src/access/problem.js';

function optimum(problem: AccessProblem): number {
  const outcome = solve(problem);
  if (outcome.kind !== 'optimal') throw new Error(outcome.kind);
  expect(costOf(problem, outcome.acts)).toBe(outcome.seconds);
  return outcome.seconds;
}

// Gripper, from the first International Planning Competition (McDermott et al., AIPS-98): optimal plan lengths.
test.each([
  [1, 3],
  [2, 5],
  [3, 9],
  [4, 11],
  [5, 15],
  [6, 17],
])('Gripper with %i balls takes %i actions', (balls, length) => {
  expect(optimum(gripper(balls))).toBe(length);
});

// Sussman, "A Computational Model of Skill Acquisition" (1975); four-operator blocks world (pick up, put down, stack, unstack).
test('the Sussman anomaly takes 6 actions', () => {
  const problem = blocksWorld({ a: 'table', b: 'table', c: 'a' }, { a: 'b', b: 'c' });
  expect(optimum(problem)).toBe(6);
});

// Lucas (1883): 2^n − 1 moves.
test.each([
  [1, 1],
  [3, 7],
  [5, 31],
  [8, 255],
])('the Tower of Hanoi with %i disks takes %i moves', (disks, moves) => {
  expect(optimum(hanoi(disks))).toBe(moves);
});

// Alcuin, Propositiones ad acuendos juvenes, XVIII: seven crossings.
test('wolf, goat and cabbage cross in 7 trips', () => {
  expect(optimum(riverCrossing())).toBe(7);
});

// Reinefeld, "Complete Solution of the Eight-Puzzle" (IJCAI-93): no position is further than 31 moves, and these two are that far
// (goal 1 to 8 in rows, blank last; positions from memory).
describe('the eight-puzzle', () => {
  test.each([
    ['647850321', 31],
    ['867254301', 31],
    ['123456708', 1],
  ])('from %s takes %i moves', { timeout: 60_000 }, (from, moves) => {
    expect(optimum(eightPuzzle(from, '123456780'))).toBe(moves);
  });
});

// Amarel, "On representations of problems of reasoning about actions" (Machine Intelligence 3, 1968): eleven crossings.
test('three missionaries and three cannibals cross in 11 trips', () => {
  expect(optimum(missionariesAndCannibals())).toBe(11);
});

// Blocks world track of the second International Planning Competition (Bacchus, AIPS-2000); instances and optima from memory.
test.each([
  ['4-0', { a: 'table', b: 'table', c: 'table', d: 'table' }, { d: 'c', c: 'b', b: 'a' }, 6],
  ['4-1', { b: 'c', c: 'a', a: 'd', d: 'table' }, { d: 'c', c: 'a', a: 'b' }, 10],
  ['4-2', { a: 'table', b: 'table', c: 'b', d: 'table' }, { a: 'b', b: 'c', c: 'd' }, 6],
  ['5-0', { a: 'table', b: 'a', e: 'b', c: 'e', d: 'table' }, { a: 'e', e: 'b', b: 'd', d: 'c' }, 12],
])('blocks %s takes its published length', (_name, start, goal, length) => {
  expect(optimum(blocksWorld(start, goal))).toBe(length);
});

// TSPLIB (Reinelt, ORSA Journal on Computing 3, 1991), with its optima; data from memory, and only the right ones give that optimum.
test.each([
  ['burma14', 3323],
  ['ulysses16', 6859],
  ['gr17', 2085],
] as const)('a round past the towns of %s takes %i', { timeout: 60_000 }, (name, length) => {
  expect(optimum(travellingSalesman(TOWNS[name]()))).toBe(length);
});
