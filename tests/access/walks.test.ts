/** Walking: the shortest ways between places, and what is left to walk. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { WalkBound } from '../../src/access/walk-bound.js';
import { closedWalks } from '../../src/access/walks.js';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import { compileText } from '../support/compile-text.js';

/** A machine with these places (a name with `*` lies under the loader) and these ways. */
function machine(places: readonly string[], ways: readonly string[]): RuleGraph {
  const id = (name: string): string => name.replace('*', '');
  const text = [
    'position loader lowered, raised aloft',
    'at rest loader lowered',
    'step raise "Raise" loader lowered to raised takes 1 min',
    ...places.map((name) => `place ${id(name)} "${name}"${name.endsWith('*') ? ' under loader' : ''}`),
    ...ways.map((way) => `walk ${way}`),
    ...places.map((name) => `task t-${id(name)} "T" every 10 days at ${id(name)} with loader lowered`),
    'task high "High" every 10 days with loader raised',
  ];
  return compileText(text.join('\n'));
}

function walks(places: readonly string[], ways: readonly string[]): readonly (readonly number[])[] {
  return closedWalks(machine(places, ways));
}

describe('walks', () => {
  test('are as short as their ways put together, both ways', () => {
    expect(walks(['a', 'b', 'c', 'd'], ['a to b 10 s', 'b to c 20 s', 'a to c 40 s', 'c to d 5 s', 'b to d 60 s'])).toEqual([
      [0, 10, 30, 35],
      [10, 0, 20, 25],
      [30, 20, 0, 5],
      [35, 25, 5, 0],
    ]);
  });

  test('take no time where nothing is said of walking', () => {
    expect(walks(['a', 'b'], [])).toEqual([
      [0, 0],
      [0, 0],
    ]);
  });

  test('do not lead through a place that is under something', () => {
    expect(walks(['a', 'pit*', 'c'], ['a to pit 10 s', 'pit to c 10 s', 'a to c 50 s'])).toEqual([
      [0, 10, 50],
      [10, 0, 10],
      [50, 10, 0],
    ]);
  });

  test('of two that are stated the shorter counts', () => {
    const graph = machine(['a', 'b'], ['a to b 10 s']);
    const way = (from: string, to: string, seconds: number) => ({ from, to, seconds });
    const stated = (...more: readonly ReturnType<typeof way>[]): RuleGraph => ({
      ...graph,
      access: { ...graph.access, walks: [...graph.access.walks, ...more] },
    });
    expect(closedWalks(stated(way('b', 'a', 7), way('a', 'b', 20)))[0]).toEqual([0, 7]);
  });
});

describe('what is left to walk', () => {
  /** Tries every order. */
  const shortest = (walk: readonly (readonly number[])[], here: number, places: readonly number[]): number =>
    places.length === 0
      ? 0
      : Math.min(
          ...places.map((next) => {
            const rest = places.filter((place) => place !== next);
            return (here < 0 ? 0 : (walk[here]?.[next] ?? Infinity)) + shortest(walk, next, rest);
          }),
        );
  const maskOf = (places: readonly number[]): number => places.reduce((mask, place) => mask | (1 << place), 0);

  test('is the shortest way that calls at every place', () => {
    const distances = fc.array(fc.array(fc.nat(9), { minLength: 6, maxLength: 6 }), { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(distances, fc.subarray([0, 1, 2, 3, 4, 5]), fc.integer({ min: -1, max: 5 }), (walk, places, here) => {
        const left = places.filter((place) => place !== here);
        const bound = new WalkBound(walk);
        expect(bound.seconds(here, maskOf(places))).toBe(shortest(walk, here, left));
        expect(bound.seconds(here, maskOf(places))).toBe(shortest(walk, here, left));
      }),
      { numRuns: 60 },
    );
  });

  test('of twelve other places is told exactly: from the middle of a line one goes to the near end first', () => {
    const line = Array.from({ length: 13 }, (_, from) => Array.from({ length: 13 }, (__, to) => Math.abs(from - to)));
    expect(new WalkBound(line).seconds(6, 2 ** 13 - 1)).toBe(6 + 12);
    expect(new WalkBound(line).seconds(3, 2 ** 12 - 1)).toBe(3 + 11);
  });

  test('of more than twelve places is the weight of a least spanning tree', () => {
    const line = Array.from({ length: 16 }, (_, from) => Array.from({ length: 16 }, (__, to) => Math.abs(from - to)));
    const all = 2 ** 16 - 1;
    const bound = new WalkBound(line);
    // Along a line a tree reaches from end to end, wherever one stands.
    expect([-1, 0, 7, 15].map((here) => bound.seconds(here, all))).toEqual([15, 15, 15, 15]);
    // A star: every place is one away from the first, and two from each other.
    const star = Array.from({ length: 15 }, (_, from) =>
      Array.from({ length: 15 }, (__, to) => (from === to ? 0 : from === 0 || to === 0 ? 1 : 2)),
    );
    expect(new WalkBound(star).seconds(0, 2 ** 15 - 1)).toBe(14);
    expect(new WalkBound(star).seconds(1, 2 ** 15 - 2)).toBe(26);
  });
});
