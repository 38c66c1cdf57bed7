/** Instances of the planning and routing literature as access problems: every action moves one part, at a cost of 1. */
import type { AccessProblem, Move } from '../../src/access/problem.js';
import type { StanceSet } from '../../src/access/stance-set.js';
import { everyStance, join, meet, withPartAt, withPartNotAt } from '../../src/access/stance-set.js';

function allOf(parts: readonly number[], sets: readonly StanceSet[]): StanceSet {
  return sets.reduce<StanceSet>((sum, set) => meet(sum, set) ?? [], everyStance(parts));
}

function puzzle(
  parts: readonly number[],
  moves: readonly Move[],
  start: readonly number[],
  goal: readonly (number | null)[],
): AccessProblem {
  return { parts, moves, nevers: [], walk: [], needs: [], start: { stance: start, place: null }, goal };
}

const move = (part: number, from: number, to: number, during: StanceSet, seconds = 1): Move => ({
  part,
  from,
  to,
  during,
  place: null,
  seconds,
});

/** A robot (part 0: room A or B) with two grippers; each ball is in room A, room B, the left or the right gripper. */
export function gripper(balls: number): AccessProblem {
  const parts = [2, ...Array.from({ length: balls }, () => 4)];
  const ball = Array.from({ length: balls }, (_, index) => index + 1);
  const moves: Move[] = [move(0, 0, 1, everyStance(parts)), move(0, 1, 0, everyStance(parts))];
  for (const one of ball)
    for (const room of [0, 1])
      for (const hand of [2, 3]) {
        const here = withPartAt(parts, 0, [room]);
        const handIsFree = ball.filter((other) => other !== one).map((other) => withPartNotAt(parts, other, [hand]));
        moves.push(move(one, room, hand, allOf(parts, [here, ...handIsFree])), move(one, hand, room, here));
      }
  return puzzle(
    parts,
    moves,
    parts.map(() => 0),
    parts.map((_, part) => (part === 0 ? null : 1)),
  );
}

/** Each block is on the table (0), in the hand (1), or on another block. A block is clear when no block is on it. */
export function blocksWorld(start: Readonly<Record<string, string>>, goal: Readonly<Record<string, string>>): AccessProblem {
  const names = Object.keys(start);
  const position = (on: string): number => (on === 'table' ? 0 : names.indexOf(on) + 2);
  const parts = names.map(() => names.length + 2);
  const moves = names.flatMap((_, block) => {
    const others = names.map((__, other) => other).filter((other) => other !== block);
    const handFree = others.map((other) => withPartNotAt(parts, other, [1]));
    const clear = (what: number): StanceSet[] =>
      names.flatMap((__, other) => (other === block || other === what ? [] : [withPartNotAt(parts, other, [what + 2])]));
    const canTake = allOf(parts, [...handFree, ...clear(block)]);
    return [
      move(block, 0, 1, canTake),
      move(block, 1, 0, everyStance(parts)),
      ...others.flatMap((under) => [
        move(block, 1, under + 2, allOf(parts, [...clear(under), withPartNotAt(parts, under, [1])])),
        move(block, under + 2, 1, canTake),
      ]),
    ];
  });
  return puzzle(
    parts,
    moves,
    names.map((name) => position(start[name] ?? 'table')),
    names.map((name) => (goal[name] === undefined ? null : position(goal[name]))),
  );
}

/** Disk 0 is the smallest; a disk moves when no smaller one is on its peg or on the one it goes to. */
export function hanoi(disks: number): AccessProblem {
  const parts = Array.from({ length: disks }, () => 3);
  const moves = parts.flatMap((_, disk) =>
    [0, 1, 2].flatMap((from) =>
      [0, 1, 2]
        .filter((to) => to !== from)
        .map((to) =>
          move(
            disk,
            from,
            to,
            allOf(
              parts,
              parts.slice(0, disk).map((__, smaller) => withPartNotAt(parts, smaller, [from, to])),
            ),
          ),
        ),
    ),
  );
  return puzzle(
    parts,
    moves,
    parts.map(() => 0),
    parts.map(() => 2),
  );
}

/** Boat (part 0: left, right) and wolf, goat, cabbage (left, right, in the boat); only the boat's trips cost anything. */
export function riverCrossing(): AccessProblem {
  const parts = [2, 3, 3, 3];
  const moves = [
    move(0, 0, 1, everyStance(parts)),
    move(0, 1, 0, everyStance(parts)),
    ...[1, 2, 3].flatMap((one) =>
      [0, 1].flatMap((bank) => {
        const here = withPartAt(parts, 0, [bank]);
        const roomInBoat = [1, 2, 3].filter((other) => other !== one).map((other) => withPartNotAt(parts, other, [2]));
        return [move(one, bank, 2, allOf(parts, [here, ...roomInBoat]), 0), move(one, 2, bank, here, 0)];
      }),
    ),
  ];
  const eaten = [0, 1].flatMap((bank) =>
    [1, 3].map((other) => allOf(parts, [withPartAt(parts, 0, [1 - bank]), withPartAt(parts, 2, [bank]), withPartAt(parts, other, [bank])])),
  );
  return { ...puzzle(parts, moves, [0, 0, 0, 0], [null, 1, 1, 1]), nevers: eaten };
}

/** Eight tiles on nine squares; a tile moves to a square beside it that has no tile. Written as the tile on each square, 0 for none. */
export function eightPuzzle(from: string, to: string): AccessProblem {
  const parts = Array.from({ length: 8 }, () => 9);
  const squares = Array.from({ length: 9 }, (_, square) => square);
  const beside = (a: number, b: number): boolean => Math.abs((a % 3) - (b % 3)) + Math.abs(Math.floor(a / 3) - Math.floor(b / 3)) === 1;
  const moves = parts.flatMap((_, tile) =>
    squares.flatMap((a) =>
      squares
        .filter((b) => beside(a, b))
        .map((b) =>
          move(
            tile,
            a,
            b,
            allOf(
              parts,
              parts.flatMap((__, other) => (other === tile ? [] : [withPartNotAt(parts, other, [b])])),
            ),
          ),
        ),
    ),
  );
  const stance = (written: string): number[] => parts.map((_, tile) => written.indexOf(String(tile + 1)));
  return puzzle(parts, moves, stance(from), stance(to));
}

/**
 * Three missionaries and three cannibals (parts 1 to 6: left, right, in the boat) and a boat for two (part 0: left, right). The boat
 * leaves only if nobody is outnumbered on the bank that is left nor, with those who arrive, on the other. Only its trips cost anything.
 */
export function missionariesAndCannibals(): AccessProblem {
  const parts = [2, 3, 3, 3, 3, 3, 3];
  const everybody = [1, 2, 3, 4, 5, 6];
  const boardings = [0, 1].flatMap((bank) =>
    everybody.flatMap((one) => {
      const here = withPartAt(parts, 0, [bank]);
      const others = everybody.filter((other) => other !== one);
      // Two in the boat already: some box for each pair that are not both in it.
      const room = others.flatMap((first, index) =>
        others.slice(index + 1).map((second) => join(withPartNotAt(parts, first, [2]), withPartNotAt(parts, second, [2])) ?? []),
      );
      return [move(one, bank, 2, allOf(parts, [here, ...room]), 0), move(one, 2, bank, here, 0)];
    }),
  );
  return puzzle(
    parts,
    [move(0, 0, 1, crossings(0)), move(0, 1, 0, crossings(1)), ...boardings],
    parts.map(() => 0),
    [null, 1, 1, 1, 1, 1, 1],
  );
}

/** The stances of the six in which the boat may leave a bank, one by one. */
function crossings(bank: number): StanceSet {
  const boxes: number[][] = [];
  for (let code = 0; code < 3 ** 6; code++) {
    const at = Array.from({ length: 6 }, (_, person) => Math.floor(code / 3 ** person) % 3);
    const isSafe = (where: readonly number[]): boolean => {
      const count = (people: readonly number[]): number => people.filter((position) => where.includes(position)).length;
      const missionaries = count(at.slice(0, 3));
      return missionaries === 0 || missionaries >= count(at.slice(3));
    };
    const aboard = at.filter((position) => position === 2).length;
    if (aboard > 0 && aboard <= 2 && isSafe([bank]) && isSafe([1 - bank, 2])) boxes.push([3, ...at.map((position) => 1 << position)]);
  }
  return boxes;
}

const BURMA14 = [
  [16.47, 96.1],
  [16.47, 94.44],
  [20.09, 92.54],
  [22.39, 93.37],
  [25.23, 97.24],
  [22.0, 96.05],
  [20.47, 97.02],
  [17.2, 96.29],
  [16.3, 97.38],
  [14.05, 98.12],
  [16.53, 97.38],
  [21.52, 95.59],
  [19.41, 97.13],
  [20.09, 94.55],
] as const;

const ULYSSES16 = [
  [38.24, 20.42],
  [39.57, 26.15],
  [40.56, 25.32],
  [36.26, 23.12],
  [33.48, 10.54],
  [37.56, 12.19],
  [38.42, 13.11],
  [37.52, 20.44],
  [41.23, 9.1],
  [41.17, 13.05],
  [36.08, -5.21],
  [38.47, 15.13],
  [38.15, 15.35],
  [37.51, 15.17],
  [35.49, 14.32],
  [39.36, 19.56],
] as const;

/** The lower triangle of the distances, row by row. */
const GR17 = [
  [633],
  [257, 390],
  [91, 661, 228],
  [412, 227, 169, 383],
  [150, 488, 112, 120, 267],
  [80, 572, 196, 77, 351, 63],
  [134, 530, 154, 105, 309, 34, 29],
  [259, 555, 372, 175, 338, 264, 232, 249],
  [505, 289, 262, 476, 196, 360, 444, 402, 495],
  [353, 282, 110, 324, 61, 208, 292, 250, 352, 154],
  [324, 638, 437, 240, 421, 329, 297, 314, 95, 578, 435],
  [70, 567, 191, 27, 346, 83, 47, 68, 189, 439, 287, 254],
  [211, 466, 74, 182, 243, 105, 150, 108, 326, 336, 184, 391, 145],
  [268, 420, 53, 239, 199, 123, 207, 165, 383, 240, 140, 448, 202, 57],
  [246, 745, 472, 237, 528, 364, 332, 349, 202, 685, 542, 157, 289, 426, 483],
  [121, 518, 142, 84, 297, 35, 29, 36, 236, 390, 238, 301, 55, 96, 153, 336],
] as const;

/** TSPLIB's distance on the earth's surface; its π is 3.141592 and its minutes are the digits after the point. */
function onTheEarth(one: readonly [number, number], other: readonly [number, number]): number {
  const radians = (degrees: number): number => (3.141592 * (Math.trunc(degrees) + (5 * (degrees - Math.trunc(degrees))) / 3)) / 180;
  const [lat1, long1, lat2, long2] = [radians(one[0]), radians(one[1]), radians(other[0]), radians(other[1])];
  const q1 = Math.cos(long1 - long2);
  const q2 = Math.cos(lat1 - lat2);
  const q3 = Math.cos(lat1 + lat2);
  return Math.trunc(6378.388 * Math.acos(0.5 * ((1 + q1) * q2 - (1 - q1) * q3)) + 1);
}

const onAMap = (towns: readonly (readonly [number, number])[]): number[][] =>
  towns.map((one, a) => towns.map((other, b) => (a === b ? 0 : onTheEarth(one, other))));

/** Distances between the towns of an instance of TSPLIB. */
export const TOWNS: Readonly<Record<'burma14' | 'ulysses16' | 'gr17', () => number[][]>> = {
  burma14: () => onAMap(BURMA14),
  ulysses16: () => onAMap(ULYSSES16),
  gr17: () => {
    const distance = (a: number, b: number): number => (a === b ? 0 : (GR17[Math.max(a, b) - 1]?.[Math.min(a, b)] ?? Infinity));
    return Array.from({ length: 17 }, (_, a) => Array.from({ length: 17 }, (__, b) => distance(a, b)));
  },
};

/** Starts and ends at the first town: the last need is there and follows all the others. */
export function travellingSalesman(walk: number[][]): AccessProblem {
  for (const via of walk.keys())
    for (const row of walk) row.forEach((seconds, to) => (row[to] = Math.min(seconds, (row[via] ?? 0) + (walk[via]?.[to] ?? 0))));
  const needs = walk.slice(1).map((_, index) => ({ stance: [[1]], place: index + 1, seconds: 0, after: [] as number[] }));
  const home = { stance: [[1]], place: 0, seconds: 0, after: needs.map((_, index) => index) };
  return { parts: [1], moves: [], nevers: [], walk, needs: [...needs, home], start: { stance: [0], place: 0 }, goal: [0] };
}
