/** What the search keeps its books in, against the plainest things that say the same; large enough to pass every word of thirty bits. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DoneSets } from '../../src/access/done-sets.js';
import type { EffectiveNeed } from '../../src/access/effective-needs.js';
import { Pattern } from '../../src/access/pattern.js';
import { PatternSpace } from '../../src/access/pattern-space.js';
import type { AccessProblem } from '../../src/access/problem.js';
import { SearchNodes } from '../../src/access/search-nodes.js';
import { StanceGraph } from '../../src/access/stance-graph.js';
import { holds, type Stance } from '../../src/access/stance-set.js';
import { exploreStances, exploreWith, reversed } from '../../src/access/stance-space.js';
import { StanceTable } from '../../src/access/stance-table.js';
import { solvableProblem } from './oracle/solvable-problem.js';

const MANY = 70;

/** Needs that ask for nothing but a place, or none, and an order in which each may follow two written before it. */
const orders = fc.array(fc.tuple(fc.option(fc.nat(2), { freq: 2 }), fc.array(fc.nat(MANY), { maxLength: 2 })), {
  minLength: 1,
  maxLength: MANY,
});

function needsOf(list: readonly (readonly [number | null, readonly number[]])[]): readonly EffectiveNeed[] {
  return list.map(([place, after], index) => ({ stance: [], place, after: index === 0 ? [] : after.map((each) => each % index) }));
}

/** Bits, in words of thirty. */
function words(count: number, members: ReadonlySet<number>): Int32Array {
  const bits = new Int32Array(Math.max(1, Math.ceil(count / 30)));
  for (const member of members) bits[Math.floor(member / 30)] = (bits[Math.floor(member / 30)] ?? 0) | (1 << (member % 30));
  return bits;
}

describe('sets of done needs', () => {
  /** Does one thing after another that can be done here, until nothing more can. */
  function doAll(needs: readonly EffectiveNeed[], done: ReadonlySet<number>, met: ReadonlySet<number>, place: number): ReadonlySet<number> {
    const now = new Set(done);
    for (let before = -1; before !== now.size;) {
      before = now.size;
      needs.forEach((need, index) => {
        const isHere = need.place === null || need.place === place;
        if (met.has(index) && isHere && need.after.every((other) => now.has(other))) now.add(index);
      });
    }
    return now;
  }

  test('take in whatever can be done in the stance, at the place, in its turn', () => {
    const visits = fc.array(fc.tuple(fc.array(fc.nat(MANY - 1), { maxLength: 60 }), fc.integer({ min: -1, max: 2 })), { maxLength: 6 });
    fc.assert(
      fc.property(orders, visits, (list, stops) => {
        const needs = needsOf(list);
        const sets = new DoneSets(needs, [], 3);
        const numbers = new Map<string, number>();
        let [done, number] = [new Set<number>() as ReadonlySet<number>, sets.none()];
        for (const [some, place] of stops) {
          const met = new Set(some.filter((need) => need < needs.length));
          const [earlier, before] = [done, number];
          done = doAll(needs, done, met, place);
          // Words of another stance stand before those that are asked for.
          const pad = 3;
          number = sets.absorb(number, Int32Array.from([...Array<number>(pad).fill(-1), ...words(needs.length, met)]), pad, place);
          const key = [...done].sort((a, b) => a - b).join();
          expect(number).toBe(numbers.get(key) ?? (done.size === earlier.size ? before : number));
          numbers.set(key, number);
          expect(sets.isWithin(before, number)).toBe(true);
          expect(sets.isWithin(number, before)).toBe(done.size === earlier.size);
          const places = new Set(needs.flatMap((need, index) => (need.place === null || done.has(index) ? [] : [need.place])));
          expect(sets.facts(number)).toEqual({
            isComplete: done.size === needs.length,
            rows: new Int32Array(0),
            places: [...places].reduce((mask, each) => mask | (1 << each), 0),
          });
        }
      }),
      { numRuns: 200 },
    );
  });

  test('wait for all that comes before, in whatever word of thirty it is', () => {
    const free: EffectiveNeed = { stance: [], place: null, after: [] };
    const needs = [...Array.from({ length: 40 }, () => free), { ...free, after: [2, 39] }];
    const sets = new DoneSets(needs, [], 0);
    const after = (...met: readonly number[]): number => sets.absorb(sets.none(), words(41, new Set(met)), 0, -1);
    expect(after(2, 40)).toBe(after(2));
    expect(after(39, 40)).toBe(after(39));
    expect(after(40)).toBe(sets.none());
    expect(new Set([after(2, 39, 40), after(2, 39), after(2), after(39)]).size).toBe(4);
  });

  test('take in what follows something that is written after it', () => {
    const needs = [[1], [2], [3], []].map((after): EffectiveNeed => ({ stance: [], place: null, after }));
    const sets = new DoneSets(needs, [], 0);
    const all = sets.absorb(sets.none(), words(4, new Set([0, 1, 2, 3])), 0, -1);
    expect(sets.facts(all).isComplete).toBe(true);
    expect(sets.absorb(sets.none(), words(4, new Set([0, 1, 2])), 0, -1)).toBe(sets.none());
  });

  test('of places past the thirtieth say nothing', () => {
    const at = (place: number): EffectiveNeed => ({ stance: [], place, after: [] });
    const sets = new DoneSets([at(29), at(30), at(31)], [], 32);
    expect(sets.facts(sets.none()).places).toBe(2 ** 29);
    const all = sets.absorb(sets.none(), Int32Array.of(7), 0, 31);
    expect(sets.facts(all)).toMatchObject({ isComplete: false, places: 2 ** 29 });
  });

  test('know what is still open in each pattern', () => {
    const problem: AccessProblem = {
      parts: [3],
      moves: [{ part: 0, from: 0, to: 1, during: [[7]], place: null, seconds: 1 }],
      nevers: [],
      walk: [],
      needs: [],
      start: { stance: [0], place: null },
      goal: [null],
    };
    const needs = [[[1]], [[2]]].map((stance): EffectiveNeed => ({ stance, place: null, after: [] }));
    const pattern = new Pattern(new PatternSpace(problem, needs, [0]), Int32Array.of(1));
    const sets = new DoneSets(needs, [pattern], 0);
    const first = sets.absorb(sets.none(), Int32Array.of(1), 0, -1);
    expect([...sets.facts(first).rows]).toEqual([pattern.row(2)]);
    expect([...sets.facts(sets.none()).rows]).toEqual([pattern.row(3)]);
    expect(sets.facts(first)).toBe(sets.facts(first));
  });
});

describe('nodes of the search', () => {
  test('are numbered as they come, and know the way to them', () => {
    const nodes = new SearchNodes();
    const chain = Array.from({ length: 700 }, (_, index) => nodes.at(index % 300, index % 7, index));
    expect(chain).toEqual(chain.map((_, index) => index));
    expect(nodes.size).toBe(700);
    expect(nodes.at(5 % 300, 5, 5)).toBe(5);
    expect([nodes.stance(301), nodes.place(301), nodes.done(301)]).toEqual([1, 0, 301]);
    expect([nodes.cost(3), nodes.bound(3)]).toEqual([0x7fffffff, -1]);
    chain.forEach((node) => {
      nodes.setBound(node, 1000 - node);
      nodes.reach(node, node * 2, node - 1, node === 0 ? -1 : node + 10);
    });
    expect([0, 255, 256, 511, 512, 699].map((node) => [nodes.cost(node), nodes.bound(node)])).toEqual(
      [0, 255, 256, 511, 512, 699].map((node) => [node * 2, 1000 - node]),
    );
    expect(nodes.way(3)).toEqual([
      { move: 11, place: 1 },
      { move: 12, place: 2 },
      { move: 13, place: 3 },
    ]);
    expect(nodes.way(0)).toEqual([]);
    expect(nodes.way(699)).toHaveLength(699);
  });

  test('of one stance that were looked at are told from the last to the first, each once', () => {
    const nodes = new SearchNodes();
    const looked = (stance: number): readonly number[] => {
      const list = [];
      for (let node = nodes.lookedAt(stance); node >= 0; node = nodes.lookedAtBefore(node)) list.push(node);
      return list;
    };
    const [a, b, c, far] = [nodes.at(7, 0, 0), nodes.at(7, 1, 0), nodes.at(7, 2, 0), nodes.at(900, 0, 0)];
    expect(looked(7)).toEqual([]);
    for (const node of [b, a, b, c, far, a, far]) nodes.lookAt(node);
    expect(looked(7)).toEqual([c, a, b]);
    expect(looked(900)).toEqual([far]);
    expect(looked(8)).toEqual([]);
    expect(looked(5000)).toEqual([]);
  });
});

/** Twelve parts of two to four positions, past thirty bits; rules and conditions drawn at random about a few of them. */
const wide = fc
  .record({
    sizes: fc.array(fc.integer({ min: 2, max: 4 }), { minLength: 12, maxLength: 12 }),
    numbers: fc.infiniteStream(fc.nat(2 ** 16)),
  })
  .map(({ sizes, numbers }): AccessProblem => {
    const below = (most: number): number => (numbers.next().value as number) % most;
    const box = (named: number): number[] => {
      const masks = sizes.map((size) => 2 ** size - 1);
      for (let count = 0; count < named; count++) {
        const part = below(12);
        masks[part] = 1 + below(2 ** (sizes[part] ?? 0) - 1);
      }
      return masks;
    };
    const moves = sizes.flatMap((size, part) =>
      Array.from({ length: 2 }, () => {
        const from = below(size);
        return { part, from, to: (from + 1 + below(size - 1)) % size, during: [box(1), box(2)], place: null, seconds: 1 };
      }),
    );
    return {
      parts: sizes,
      moves: moves.map((move) => ({
        ...move,
        during: move.during.map((masks) => masks.with(move.part, 2 ** (sizes[move.part] ?? 0) - 1)),
      })),
      nevers: Array.from({ length: 3 }, () => [box(3), box(2)]),
      walk: [],
      needs: Array.from({ length: 40 }, () => ({ stance: [box(2), box(3)], place: null, seconds: 0, after: [] })),
      start: { stance: sizes.map((size) => below(size)), place: null },
      goal: sizes.map(() => null),
    };
  });

const isForbidden = ({ nevers }: AccessProblem, stance: Stance): boolean => nevers.some((never) => holds(never, stance));

function exitsOf(problem: AccessProblem, stance: Stance): readonly { readonly move: number; readonly to: Stance }[] {
  return problem.moves.flatMap(({ part, from, to, during }, move) => {
    const after = stance.with(part, to);
    return stance[part] === from && holds(during, stance) && !isForbidden(problem, after) ? [{ move, to: after }] : [];
  });
}

describe('stances by number', () => {
  test('have the exits, the bits and the rules that the plain ones have', () => {
    fc.assert(
      fc.property(wide, (problem) => {
        const table = new StanceTable(problem.parts, problem.moves, problem.nevers);
        const wanted = problem.needs.slice(0, 4).map(({ stance }) => ({ set: stance, test: table.test(stance) }));
        const open = [table.numberOf(problem.start.stance)];
        for (let count = 0; count < 20 && open[count] !== undefined; count++) {
          const number = open[count] ?? 0;
          const stance = table.stance(number);
          expect(table.numberOf(stance)).toBe(number);
          expect(
            stance.every(
              (position, part) =>
                table.has(number, part, position) && !table.has(number, part, (position + 1) % 2 === position ? 1 : (position + 1) % 2),
            ),
          ).toBe(true);
          const exits = table.exits(number);
          expect(Array.from(exits).flatMap((move, at) => (at % 2 === 0 ? [{ move, to: table.stance(exits[at + 1] ?? 0) }] : []))).toEqual(
            exitsOf(problem, stance),
          );
          expect(table.exits(number)).toEqual(exits);
          expect(table.isForbidden(number)).toBe(isForbidden(problem, stance));
          for (const { set, test } of wanted) expect(table.passes(number, test)).toBe(holds(set, stance));
          problem.moves.forEach((move, index) => {
            expect(table.allows(number, index)).toBe(holds(move.during, stance));
            expect(table.begins(number, index)).toBe(stance[move.part] === move.from);
          });
          for (let at = 1; at < exits.length; at += 2) if (!open.includes(exits[at] ?? 0)) open.push(exits[at] ?? 0);
        }
      }),
      { numRuns: 30 },
    );
  });

  test('know which needs they meet, and how patterns number them', () => {
    fc.assert(
      fc.property(wide, fc.subarray([0, 3, 5, 8, 11], { minLength: 1, maxLength: 3 }), (problem, parts) => {
        const patterns = [parts, [1]].map(
          (some) => new Pattern(new PatternSpace(problem, problem.needs, some), new Int32Array(problem.moves.length)),
        );
        const graph = new StanceGraph(problem, problem.needs, patterns);
        const known = [problem.start.stance];
        expect(graph.numberOf(problem.start.stance)).toBe(0);
        for (let number = 0; number < Math.min(known.length, 90); number++) {
          const stance = known[number] ?? [];
          const exits = graph.exits(number);
          exitsOf(problem, stance).forEach(({ move, to }, index) => {
            expect(exits[2 * index]).toBe(move);
            const at = exits[2 * index + 1] ?? -1;
            expect(known[at] ?? to).toEqual(to);
            known[at] = to;
          });
          const met = new Set(
            problem.needs.flatMap(({ stance: set }, need) => (holds(set, stance) && !isForbidden(problem, stance) ? [need] : [])),
          );
          const at = graph.met(number);
          expect(graph.metWords.slice(at, at + 2)).toEqual(words(40, met));
          patterns.forEach(({ space }, index) => expect(graph.patternNumber(number, index)).toBe(space.numberOf(stance)));
          expect(graph.numberOf(stance)).toBe(number);
          expect(stance.every((position, part) => graph.has(number, part, position))).toBe(true);
        }
        expect(graph.size).toBe(known.length);
      }),
      { numRuns: 30 },
    );
  });
});

describe('going through all stances', () => {
  const machineOf = (problem: AccessProblem) => ({
    sizes: problem.parts,
    moves: problem.moves,
    nevers: problem.nevers,
    rest: problem.start.stance,
  });

  /** Fewest steps to each stance, told plainly. */
  function plain(problem: AccessProblem, moves: (part: number) => boolean): ReadonlyMap<string, number> {
    const steps = new Map([[problem.start.stance.join(), 0]]);
    const open = [problem.start.stance];
    for (let here = open.shift(); here !== undefined; here = open.shift()) {
      for (const { move, to } of exitsOf(problem, here)) {
        if (!moves(problem.moves[move]?.part ?? -1) || steps.has(to.join())) continue;
        steps.set(to.join(), (steps.get(here.join()) ?? 0) + 1);
        open.push(to);
      }
    }
    return steps;
  }

  const small = solvableProblem({ parts: 3, positions: 3, needs: 2, places: 0 });

  test('finds each with the fewest steps to it, and the ways back', () => {
    fc.assert(
      fc.property(small, fc.boolean(), (problem, all) => {
        const moves = (part: number): boolean => all || part !== 1;
        const space = exploreWith(machineOf(problem), 1000, moves);
        const steps = plain(problem, moves);
        expect(space.size).toBe(steps.size);
        expect(space.isWhole).toBe(true);
        const stances = Array.from({ length: space.size }, (_, number) => number);
        for (const number of stances) {
          const stance = space.stance(number);
          const way = space.wayTo(number);
          expect(way).toHaveLength(steps.get(stance.join()) ?? -1);
          expect(
            way.reduce((here, move) => here.with(problem.moves[move]?.part ?? 0, problem.moves[move]?.to ?? 0), problem.start.stance),
          ).toEqual(stance);
          const returning = plain({ ...problem, start: { stance, place: null } }, moves);
          expect(space.returns(number)).toBe(returning.has(problem.start.stance.join()));
        }
        for (const { stance: set } of problem.needs) {
          const inside = stances.map((number) => holds(set, space.stance(number)));
          expect([...space.members(set)]).toEqual(inside.map(Number));
          expect(space.nearest(set)).toBe(inside.indexOf(true));
        }
      }),
      { numRuns: 60 },
    );
  });

  test('turned round has every move once, at the stance that it leads to', () => {
    fc.assert(
      fc.property(small, (problem) => {
        const space = exploreStances(machineOf(problem), 1000);
        const exits = Array.from({ length: space.size }, (_, number) => space.exits(number));
        const into = reversed(exits);
        const forth = exits.flatMap((out, from) =>
          Array.from(out).flatMap((move, at) => (at % 2 === 0 ? [`${from} ${move} ${out[at + 1] ?? 0}`] : [])),
        );
        const back = exits.flatMap((_, to) => {
          const [first, end] = [into.first[to] ?? 0, into.first[to + 1] ?? 0];
          return Array.from(
            { length: end - first },
            (__, index) => `${into.from[first + index] ?? 0} ${into.move[first + index] ?? 0} ${to}`,
          );
        });
        expect([...back].sort()).toEqual([...forth].sort());
      }),
      { numRuns: 60 },
    );
  });

  test('stops past so many, and past sixteen ways out of each', () => {
    const during = [[2 ** 20 - 1]];
    const line = Array.from({ length: 19 }, (_, from) => ({ part: 0, from, to: from + 1, during, place: null, seconds: 1 }));
    const machine = { sizes: [20], moves: line, nevers: [], rest: [0] };
    expect(exploreStances(machine, 20)).toMatchObject({ size: 20, isWhole: true });
    expect(exploreStances(machine, 19).isWhole).toBe(false);
    expect(exploreStances(machine, 5)).toMatchObject({ size: 6, isWhole: false });
    expect(exploreStances(machine, 5).exits(5)).toHaveLength(0);
    // All with all: 19 ways out of each of twenty. Of the first sixteen or so they are followed, within twenty times sixteen.
    const all = Array.from({ length: 20 }, (_, from) =>
      [...Array(20).keys()].filter((to) => to !== from).map((to) => ({ ...line[0], part: 0, from, to, during, place: null, seconds: 1 })),
    ).flat();
    const crowded = exploreStances({ ...machine, moves: all }, 20);
    expect(crowded.isWhole).toBe(false);
    // 17 × 19 = 323 is the first past 320.
    expect([crowded.exits(16).length, crowded.exits(17).length]).toEqual([38, 0]);
    expect(exploreStances({ ...machine, moves: all }, 24).isWhole).toBe(true);
  });
});
