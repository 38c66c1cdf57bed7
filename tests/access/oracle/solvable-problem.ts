/* eslint-disable @typescript-eslint/no-non-null-assertion -- brute force is kept as plain as can be: a hole in an array would be a failing test */
/**
 * Random machines with a way: somebody has wandered about on each, and what is asked for is asked of stances and places that they came
 * through, in that order. Most machines drawn without that have none, and say little about the search.
 */
import fc from 'fast-check';
import type { AccessProblem, Move, Need } from '../../../src/access/problem.js';
import type { Box, StanceSet } from '../../../src/access/stance-set.js';

interface Dice {
  /** 0 up to, not including, `below`. */
  readonly below: (below: number) => number;
  readonly oneIn: (count: number) => boolean;
}

export interface SolvableSize {
  readonly parts: number;
  readonly positions: number;
  readonly needs: number;
  readonly places: number;
}

export function solvableProblem(size: SolvableSize): fc.Arbitrary<AccessProblem> {
  return fc.infiniteStream(fc.nat(2 ** 20)).map((numbers) => {
    const below = (most: number): number => (numbers.next().value as number) % most;
    return wandered({ below, oneIn: (count) => below(count) === 0 }, size);
  });
}

function wandered(dice: Dice, size: SolvableSize): AccessProblem {
  const parts = Array.from({ length: 1 + dice.below(size.parts) }, () => 2 + dice.below(size.positions - 1));
  const place = (): number | null => (size.places === 0 || dice.oneIn(2) ? null : dice.below(size.places));
  const moves = parts.flatMap((positions, part) => movesOf(dice, parts, part, positions, place));
  const start = { stance: parts.map((positions) => dice.below(positions)), place: place() };
  const seen = wander(dice, moves, start.stance);
  return {
    parts,
    moves,
    nevers: Array.from({ length: dice.below(3) }, () => boxesWithout(dice, parts, seen)),
    walk: distances(dice, size.places),
    needs: needsAlong(dice, parts, seen, dice.below(size.needs + 1), place),
    start,
    goal: seen.at(-1)!.map((position) => (dice.oneIn(2) ? position : null)),
  };
}

/** There and back between neighbouring positions, and now and then a way past one of them. */
function movesOf(dice: Dice, parts: readonly number[], part: number, positions: number, place: () => number | null): readonly Move[] {
  const ends = Array.from({ length: positions - 1 }, (_, from) => [from, from + 1] as const);
  if (positions > 2 && dice.oneIn(2)) ends.push([0, 2]);
  return ends.flatMap(([from, to]) => {
    const during = Array.from({ length: 1 + dice.below(2) }, () => boxAbout(dice, parts, part));
    const there = { part, from, to, during, place: place(), seconds: dice.below(7) };
    const back = { ...there, from: to, to: from };
    return dice.oneIn(5) ? [there] : [there, back];
  });
}

function boxAbout(dice: Dice, parts: readonly number[], free: number): Box {
  return parts.map((positions, part) => (part === free || !dice.oneIn(3) ? 2 ** positions - 1 : 1 + dice.below(2 ** positions - 1)));
}

/** The stances that a person comes through who makes moves as they come. */
function wander(dice: Dice, moves: readonly Move[], start: readonly number[]): readonly (readonly number[])[] {
  const seen = [start];
  for (let step = 0; step < 10; step++) {
    const here = seen.at(-1)!;
    const open = moves.filter((move) => here[move.part] === move.from && isIn(move.during, here));
    if (open.length === 0) break;
    const move = open[dice.below(open.length)]!;
    seen.push(here.map((position, part) => (part === move.part ? move.to : position)));
  }
  return seen;
}

function isIn(set: StanceSet, stance: readonly number[]): boolean {
  return set.some((box) => box.every((mask, part) => (mask & (1 << stance[part]!)) !== 0));
}

function boxesWithout(dice: Dice, parts: readonly number[], seen: readonly (readonly number[])[]): StanceSet {
  return [boxAbout(dice, parts, -1), boxAbout(dice, parts, -1)].filter((box) => !seen.some((stance) => isIn([box], stance)));
}

/** Each need asks for a stance that was come through, as it was or as one of several; later ones may have to follow earlier ones. */
function needsAlong(
  dice: Dice,
  parts: readonly number[],
  seen: readonly (readonly number[])[],
  count: number,
  place: () => number | null,
): readonly Need[] {
  const times = Array.from({ length: count }, () => dice.below(seen.length)).sort((a, b) => a - b);
  const needs: Need[] = [];
  for (const [index, time] of times.entries()) {
    const same = index > 0 && dice.oneIn(4) ? needs[dice.below(index)] : undefined;
    const box = seen[time]!.map((position, part) =>
      dice.oneIn(2) ? 2 ** parts[part]! - 1 : (1 << position) | (dice.oneIn(2) ? 1 + dice.below(2 ** parts[part]! - 1) : 0),
    );
    const stance = same === undefined ? (dice.oneIn(3) ? [box, boxAbout(dice, parts, -1)] : [box]) : same.stance;
    const after = index > 0 && dice.oneIn(2) ? [dice.below(index)] : [];
    needs.push({ stance, place: same !== undefined && dice.oneIn(2) ? same.place : place(), seconds: dice.below(5), after });
  }
  return needs;
}

/** Between places in a plane, so that no detour is shorter; now and then two lie together. */
function distances(dice: Dice, places: number): readonly (readonly number[])[] {
  const at = Array.from({ length: places }, () => [dice.below(6), dice.below(3)] as const);
  return at.map(([x, y]) => at.map(([u, v]) => Math.abs(x - u) + Math.abs(y - v)));
}
