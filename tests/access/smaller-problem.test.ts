/** What is left out of a problem before it is searched, and what is not: worked by hand. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { closedOrder, effectiveNeeds } from '../../src/access/effective-needs.js';
import { distinctDemands } from '../../src/access/pattern-demands.js';
import type { AccessProblem, Move, Need } from '../../src/access/problem.js';
import { withRelevantParts } from '../../src/access/relevant-parts.js';
import type { Box } from '../../src/access/stance-set.js';

const ANY = 0b111;

function need(box: Box, more: Partial<Need> = {}): Need {
  return { stance: [box], place: null, seconds: 1, after: [], ...more };
}

function move(part: number, from: number, to: number, box: Box, more: Partial<Move> = {}): Move {
  return { part, from, to, during: [box], place: null, seconds: 1, ...more };
}

/** Parts of three positions each, all at their first. */
function problemOf(parts: number, more: Partial<AccessProblem>): AccessProblem {
  const stance = Array.from({ length: parts }, () => 0);
  const nothing = { moves: [], nevers: [], walk: [], needs: [], goal: stance.map(() => null) };
  return { parts: stance.map(() => 3), start: { stance, place: null }, ...nothing, ...more };
}

/** What is kept of the needs: stances in words of one box, with what each must follow. */
function kept(...needs: readonly Need[]): readonly unknown[] {
  return effectiveNeeds(problemOf(2, { needs })).map(({ stance, place, after }) => [stance[0]?.join(' '), place, [...after].sort()]);
}

describe('of the needs', () => {
  test('equal ones count once, the first of them', () => {
    expect(kept(need([1, ANY]), need([1, ANY]), need([2, ANY]), need([1, ANY]))).toEqual([
      ['1 7', null, []],
      ['2 7', null, []],
    ]);
  });

  test('one that a stricter one brings along is dropped, whichever is written first', () => {
    expect(kept(need([1, ANY]), need([1, 2]))).toEqual([['1 2', null, []]]);
    expect(kept(need([1, 2]), need([3, ANY]))).toEqual([['1 2', null, []]]);
    expect(kept(need([1, 2]), need([1, 4]))).toHaveLength(2);
  });

  test('the place of the stricter one must do: the same, or none asked for', () => {
    const [here, there] = [{ place: 0 }, { place: 1 }];
    expect(kept(need([1, 2], here), need([1, ANY]))).toEqual([['1 2', 0, []]]);
    expect(kept(need([1, 2], here), need([1, ANY], here))).toEqual([['1 2', 0, []]]);
    expect(kept(need([1, 2], here), need([1, ANY], there))).toHaveLength(2);
    expect(kept(need([1, 2]), need([1, ANY], there))).toHaveLength(2);
  });

  test('one that must follow what the stricter one need not follow stays', () => {
    const other = need([ANY, 4]);
    expect(kept(other, need([1, 2]), need([1, ANY], { after: [0] }))).toEqual([
      ['7 4', null, []],
      ['1 2', null, []],
      ['1 7', null, [0]],
    ]);
    expect(kept(other, need([1, 2], { after: [0] }), need([1, ANY], { after: [0] }))).toEqual([
      ['7 4', null, []],
      ['1 2', null, [0]],
    ]);
    expect(kept(other, need([1, 2], { after: [0] }), need([1, ANY]))).toHaveLength(2);
    // Each follows one thing, but not the same.
    expect(kept(other, need([4, 1]), need([1, 2], { after: [0] }), need([1, ANY], { after: [1] }))).toHaveLength(4);
  });

  test('one may be dropped that follows the stricter one itself, or that comes before it', () => {
    expect(kept(need([1, 2]), need([1, ANY], { after: [0] }))).toEqual([['1 2', null, []]]);
    expect(kept(need([1, ANY]), need([1, 2], { after: [0] }))).toEqual([['1 2', null, []]]);
  });

  test('one that others wait for stays, unless they wait for the stricter one too', () => {
    const waits = (after: readonly number[]): Need => need([4, ANY], { after });
    expect(kept(need([1, 2]), need([1, ANY]), waits([1]))).toEqual([
      ['1 2', null, []],
      ['1 7', null, []],
      ['4 7', null, [1]],
    ]);
    expect(kept(need([1, 2]), need([1, ANY]), waits([0, 1]))).toEqual([
      ['1 2', null, []],
      ['4 7', null, [0]],
    ]);
  });

  test('what comes before one through a dropped one is still before it', () => {
    expect(kept(need([4, 1]), need([1, ANY], { after: [0] }), need([1, 2], { after: [1] }), need([2, 4], { after: [2] }))).toEqual([
      ['4 1', null, []],
      ['1 2', null, [0]],
      ['2 4', null, [0, 1]],
    ]);
  });

  test('everything before one is told, through any number of rules; in a circle each comes before itself', () => {
    const order = (...after: readonly (readonly number[])[]): readonly (readonly number[])[] =>
      closedOrder(after.map((each) => need([1, 1], { after: each }))).map((set) => [...set].sort());
    expect(order([], [0], [1], [])).toEqual([[], [0], [0, 1], []]);
    expect(order([2], [0], [1])).toEqual([
      [0, 1, 2],
      [0, 1, 2],
      [0, 1, 2],
    ]);
  });
});

describe('of the parts', () => {
  const free = [ANY, ANY, ANY, ANY];
  const steps = [move(0, 0, 1, free), move(1, 0, 1, free), move(2, 0, 1, free), move(3, 0, 1, free)];
  /** Which parts stay, told by the moves that do. */
  const moving = (more: Partial<AccessProblem>): readonly number[] => withRelevantParts(problemOf(4, { moves: steps, ...more })).moves;

  test('those stay of which something is asked: by a need, or by the end where it is elsewhere than the start', () => {
    expect(moving({})).toEqual([]);
    expect(moving({ needs: [need([ANY, 2, ANY, ANY])] })).toEqual([1]);
    expect(moving({ goal: [0, null, 1, null] })).toEqual([2]);
  });

  test('and those that a part which stays can only be moved with', () => {
    const moves = [move(0, 0, 1, [ANY, 2, ANY, ANY]), move(1, 0, 1, [ANY, ANY, 2, ANY]), ...steps.slice(2)];
    expect(moving({ moves, goal: [1, null, null, null] })).toEqual([0, 1, 2]);
    expect(moving({ moves, goal: [null, 1, null, null] })).toEqual([1, 2]);
  });

  test('and those that a never-rule ties to one that stays; a rule about others is left out with them', () => {
    const nevers = [[[2, 2, ANY, ANY]], [[ANY, ANY, 2, 2]]];
    expect(moving({ nevers, goal: [1, null, null, null] })).toEqual([0, 1]);
    expect(withRelevantParts(problemOf(4, { nevers, goal: [1, null, null, null] })).problem.nevers).toEqual([[[2, 2]]]);
  });

  test('and all parts of a never-rule that is broken as the machine stands, which must be mended before anything is done', () => {
    const nevers = [[[1, ANY, 1, ANY]], [[2, ANY, ANY, 2]]];
    expect(moving({ nevers, needs: [need([ANY, 2, ANY, ANY])] })).toEqual([0, 1, 2, 3]);
  });

  test('what is said of those that stay is said of them under their new numbers', () => {
    const { problem, moves } = withRelevantParts(
      problemOf(4, {
        parts: [3, 2, 3, 2],
        moves: [move(0, 0, 1, [7, 3, 7, 3]), move(2, 0, 2, [7, 3, 7, 1], { seconds: 5 })],
        needs: [need([7, 3, 4, 3])],
        start: { stance: [0, 1, 0, 1], place: null },
        goal: [null, 1, 2, 0],
      }),
    );
    expect(moves).toEqual([1]);
    expect(problem).toMatchObject({
      parts: [3, 2],
      moves: [{ part: 0, from: 0, to: 2, during: [[7, 1]], seconds: 5 }],
      needs: [{ stance: [[4, 3]] }],
      start: { stance: [0, 1] },
      goal: [2, 0],
    });
  });
});

describe('of what the needs ask of a few parts', () => {
  const ask = (parts: readonly number[], ...stances: readonly (readonly Box[])[]): unknown => {
    const needs = stances.map((stance) => ({ stance, place: null, after: [] }));
    return distinctDemands(problemOf(3, {}), needs, parts);
  };

  test('each distinct thing counts once, in the order of the parts', () => {
    expect(ask([0, 2], [[1, 2, 4]], [[1, 4, 4]], [[2, 7, 7]], [[2, 7, 7]])).toEqual({
      sets: [[[1, 4]], [[2, 7]]],
      ofNeed: [1, 1, 2, 2],
    });
  });

  test('what says nothing of them does not count, not even as one way of several', () => {
    expect(
      ask(
        [0],
        [[7, 1, 1]],
        [
          [1, 7, 7],
          [7, 2, 7],
        ],
        [[4, 7, 7]],
      ),
    ).toEqual({ sets: [[[4]]], ofNeed: [0, 0, 1] });
    expect(
      ask(
        [0, 1],
        [
          [1, 7, 7],
          [7, 2, 7],
        ],
      ),
    ).toEqual({
      sets: [
        [
          [1, 7],
          [7, 2],
        ],
      ],
      ofNeed: [1],
    });
  });

  test('alternatives are told apart that differ only in where one ends', () => {
    const { sets } = ask(
      [0, 1],
      [
        [1, 2, 7],
        [31, 4, 7],
      ],
      [
        [1, 23, 7],
        [1, 4, 7],
      ],
    ) as { sets: unknown[] };
    expect(sets).toHaveLength(2);
  });

  test('past the twentieth nothing more is kept apart', () => {
    const masks = [1, 2, 3, 4, 5, 6].flatMap((a) => [1, 2, 3, 4].map((b): readonly Box[] => [[a, b, 7]]));
    const { sets, ofNeed } = ask([0, 1], ...masks) as { sets: unknown[]; ofNeed: number[] };
    expect(sets).toHaveLength(20);
    expect(ofNeed).toEqual(masks.map((_, index) => (index < 20 ? 2 ** index : 0)));
  });
});

test('the order of needs does not change what is kept of them', () => {
  const stances = fc.array(fc.tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 7 })), { minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(stances, (boxes) => {
      const words = (list: readonly Box[]): readonly unknown[] =>
        kept(...list.map((box) => need(box)))
          .map((row) => String(row))
          .sort();
      expect(words(boxes.map((box) => [...box]))).toEqual(words([...boxes].reverse().map((box) => [...box])));
    }),
  );
});
