/**
 * Which parts to look at together. Parts that ask something of each other's positions are put into one pattern, the closest first,
 * as long as the pattern stays small enough to solve outright.
 */
import type { EffectiveNeed } from './effective-needs.js';
import { itemAt } from './item-at.js';
import { distinctDemands } from './pattern-demands.js';
import type { AccessProblem } from './problem.js';
import type { StanceSet } from './stance-set.js';
import { partsNamed } from './stance-set.js';

/** How large a pattern may become. */
export interface PatternSize {
  /** Stances of the parts taken together. */
  readonly stances: number;
  /** Stances times sets of open demands. */
  readonly table: number;
}

/** How much it ties two parts that one is moved only while the other is somewhere, that a never-rule names both, that a need does. */
export interface BondWeights {
  readonly move: number;
  readonly never: number;
  readonly need: number;
}

/** Divides the parts into groups that share none, each small enough for a pattern. */
export function divideParts(
  problem: AccessProblem,
  needs: readonly EffectiveNeed[],
  size: PatternSize,
  weights: BondWeights,
): readonly (readonly number[])[] {
  const bonds = bondsBetween(problem, needs, weights);
  let groups: readonly Group[] = problem.parts.map((positions, part) => ({ parts: [part], size: positions, bonds: itemAt(bonds, part) }));
  const refused = new Set<string>();
  for (;;) {
    const pair = closestPair(groups, size, refused);
    if (pair === null) return groups.map(({ parts }) => parts);
    const [first, second] = pair;
    const both = joined(first, second);
    if (both.size * 2 ** distinctDemands(problem, needs, both.parts).sets.length > size.table) refused.add(pairKey(first, second));
    else groups = groups.flatMap((group) => (group === first ? [both] : group === second ? [] : [group]));
  }
}

interface Group {
  readonly parts: readonly number[];
  readonly size: number;
  /** To each part, the bonds of all parts of the group together. */
  readonly bonds: readonly number[];
}

function joined(first: Group, second: Group): Group {
  return {
    parts: [...first.parts, ...second.parts],
    size: first.size * second.size,
    bonds: first.bonds.map((bond, part) => bond + (second.bonds[part] ?? 0)),
  };
}

/** For each part how closely it is tied to each other one. */
export type Bonds = readonly (readonly number[])[];

/** How closely the parts are tied to one another. */
export function bondsBetween(problem: AccessProblem, needs: readonly EffectiveNeed[], weights: BondWeights): Bonds {
  const bonds = problem.parts.map(() => problem.parts.map(() => 0));
  const tie = (one: number, other: number, weight: number): void => {
    for (const [from, to] of [
      [one, other],
      [other, one],
    ] as const) {
      const row = itemAt(bonds, from);
      if (from !== to) row[to] = itemAt(row, to) + weight;
    }
  };
  const tieAll = (set: StanceSet, weight: number): void => {
    const named = partsNamed(set, problem.parts);
    named.forEach((one, index) => named.slice(index + 1).forEach((other) => tie(one, other, weight)));
  };
  for (const move of problem.moves) for (const part of partsNamed(move.during, problem.parts)) tie(move.part, part, weights.move);
  for (const never of problem.nevers) tieAll(never, weights.never);
  for (const need of needs) tieAll(need.stance, weights.need);
  return bonds;
}

function closestPair(groups: readonly Group[], size: PatternSize, refused: ReadonlySet<string>): readonly [Group, Group] | null {
  let best: readonly [Group, Group] | null = null;
  let closest = 0;
  groups.forEach((first, index) => {
    for (const second of groups.slice(index + 1)) {
      if (first.size * second.size > size.stances) continue;
      const bond = second.parts.reduce((sum, part) => sum + (first.bonds[part] ?? 0), 0);
      const closeness = bond / Math.log2(first.size * second.size);
      if (closeness <= closest || refused.has(pairKey(first, second))) continue;
      best = [first, second];
      closest = closeness;
    }
  });
  return best;
}

function pairKey(first: Group, second: Group): string {
  return `${first.parts.join()}|${second.parts.join()}`;
}
