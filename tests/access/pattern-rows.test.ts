/** A pattern's rows: one for each set of open demands, as many as there are, and those that come after it gave up what it did not need. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Pattern } from '../../src/access/pattern.js';
import { PatternSpace } from '../../src/access/pattern-space.js';
import type { AccessProblem } from '../../src/access/problem.js';
import { solvableProblem } from './oracle/solvable-problem.js';

test('of thirty-two sets all are kept: along a line the farthest demand counts, and every place before it', () => {
  const positions = [0, 1, 2, 3, 4, 5];
  const problem: AccessProblem = {
    parts: [6],
    moves: positions.slice(1).map((to, place) => ({ part: 0, from: to - 1, to, during: [[63]], place, seconds: 2 })),
    nevers: [],
    walk: [],
    needs: positions.slice(1).map((position) => ({ stance: [[1 << position]], place: null, seconds: 0, after: [] })),
    start: { stance: [0], place: null },
    goal: [null],
  };
  const space = new PatternSpace(problem, problem.needs, [0]);
  const pattern = new Pattern(space, Int32Array.of(2, 2, 2, 2, 2));
  const sets = Array.from({ length: 32 }, (_, open) => open);
  // Demand n is to stand at n + 1; whoever is past it has missed it.
  const farthest = (open: number): number => 32 - Math.clz32(open);
  sets.forEach((open) => pattern.row(open));
  expect(sets.map((open) => pattern.seconds(pattern.row(open), 0))).toEqual(sets.map((open) => 2 * farthest(open)));
  expect(sets.map((open) => pattern.places(pattern.row(open), 0))).toEqual(sets.map((open) => 2 ** farthest(open) - 1));
  expect(pattern.seconds(pattern.row(1), 3)).toBeGreaterThan(1000);
});

test('that come after costs were given up count those that are left', () => {
  fc.assert(
    fc.property(solvableProblem({ parts: 3, positions: 3, needs: 4, places: 0 }), (problem) => {
      const parts = [...problem.parts.keys()];
      const space = new PatternSpace(problem, problem.needs, parts);
      const pattern = new Pattern(
        space,
        Int32Array.from(problem.moves, (move) => move.seconds),
      );
      pattern.row(0);
      const taken = pattern.saturate(problem.moves.length);
      const fresh = new Pattern(space, taken);
      for (let open = 0; open < 2 ** space.brings.length; open++)
        for (const stance of space.reached) expect(pattern.seconds(pattern.row(open), stance)).toBe(fresh.seconds(fresh.row(open), stance));
    }),
    { numRuns: 60 },
  );
});

test('take of each move the most that any of them needs', () => {
  const step = (from: number, to: number, seconds: number): AccessProblem['moves'][number] => ({
    part: 0,
    from,
    to,
    during: [[7]],
    place: null,
    seconds,
  });
  const problem: AccessProblem = {
    parts: [3],
    moves: [step(0, 1, 2), step(1, 2, 2), step(0, 2, 5), step(2, 1, 1)],
    nevers: [],
    walk: [],
    needs: [4, 2].map((mask) => ({ stance: [[mask]], place: null, seconds: 0, after: [] })),
    start: { stance: [0], place: null },
    goal: [null],
  };
  const pattern = new Pattern(
    new PatternSpace(problem, problem.needs, [0]),
    Int32Array.from(problem.moves, (move) => move.seconds),
  );
  // To the last position it is 4 and 2 s, so that of the direct way 4 s are enough; to the middle one it is 2 s, and 1 s from the last.
  pattern.row(1);
  pattern.row(2);
  expect([...pattern.saturate(4)]).toEqual([2, 2, 4, 1]);
});
