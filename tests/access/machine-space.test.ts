/** Going through a machine group by group says what going through all its stances at once says. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { machineSpace } from '../../src/access/machine-space.js';
import { exploreStances } from '../../src/access/stance-space.js';
import { randomProblem } from './oracle/random-problem.js';

const MANY = 5000;

test('stances, ways back and what can be reached are the same, and ways into a set are as short', () => {
  let [tried, divided] = [0, 0];
  fc.assert(
    fc.property(randomProblem({ parts: 5, positions: 3, needs: 4, places: 0 }), ({ parts, moves, nevers, needs, start }) => {
      // Most random conditions name other parts: with some of them left out, groups come apart.
      const loose = moves.map((move, index) => (index % 2 === 0 ? move : { ...move, during: [parts.map((size) => 2 ** size - 1)] }));
      const machine = { sizes: parts, moves: loose, nevers: nevers.slice(1), rest: start.stance };
      const sets = needs.map((need) => need.stance);
      const whole = exploreStances(machine, MANY);
      const space = machineSpace(machine, sets, MANY);
      tried++;
      if (space.groups.length > 1) divided++;
      expect(space.isWhole).toBe(true);
      expect(space.groups.reduce((product, group) => product * group.space.size, 1)).toBe(whole.size);
      const returning = (size: number, returns: (stance: number) => boolean): number =>
        Array.from({ length: size }, (_, stance) => stance).filter(returns).length;
      expect(space.groups.reduce((product, { space: each }) => product * returning(each.size, each.returns), 1)).toBe(
        returning(whole.size, whole.returns),
      );
      for (const set of sets) {
        const nearest = whole.nearest(set);
        expect(space.unreachableIn(set) === null).toBe(nearest >= 0);
        expect(space.wayInto(set)?.length).toBe(nearest < 0 ? undefined : whole.wayTo(nearest).length);
      }
    }),
    { numRuns: 500, seed: 20261125 },
  );
  expect(divided / tried).toBeGreaterThan(0.2);
});

test('sixty-four parts that have nothing to do with each other are sixty-four times a few stances', () => {
  const sizes = Array.from({ length: 64 }, () => 3);
  const during = [sizes.map((size) => 2 ** size - 1)];
  const moves = sizes.flatMap((_, part) => [0, 1].map((from) => ({ part, from, to: from + 1, during, place: null, seconds: 1 })));
  const space = machineSpace({ sizes, moves, nevers: [], rest: sizes.map(() => 0) }, [], MANY);
  expect(space.isWhole).toBe(true);
  expect(space.groups).toHaveLength(64);
  expect(space.wayInto([sizes.map(() => 4)])).toHaveLength(128);
});
