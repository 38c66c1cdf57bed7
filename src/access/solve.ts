/**
 * The cheapest order in which to move parts, walk and do things, with its proof; the door to the search.
 *
 * A problem is made smaller without losing an optimum (parts that cannot matter are left out, places no walk apart become one,
 * seconds are divided by what they have in common), searched, and the answer is told in the terms of the problem as it was given.
 */
import { commonDivisor } from '../values/common-divisor.js';
import { type BondWeights, divideParts, type PatternSize } from './divide-parts.js';
import { closedOrder, effectiveNeeds, type EffectiveNeed } from './effective-needs.js';
import { itemAt } from './item-at.js';
import { NO_WAY } from './no-way.js';
import { Pattern } from './pattern.js';
import { PatternSpace } from './pattern-space.js';
import type { AccessProblem, Act, SearchCaps, SearchOutcome } from './problem.js';
import { DEFAULT_CAPS } from './problem.js';
import { withRelevantParts } from './relevant-parts.js';
import type { Leg, PatternSums, RunResult } from './search.js';
import { runSearch } from './search.js';
import { shareCosts } from './share-costs.js';
import { holds } from './stance-set.js';

/** First small patterns, which cost almost nothing; if they do not soon lead to the end, large ones; in the end some that overlap. */
const SMALL_PATTERNS = { stances: 32, table: 512 };
const LARGE_PATTERNS = { stances: 1000, table: 65_536 };
const SOON = 200;
const LATER = 1500;

/** Where the exact search gives up: how far the bound is trusted beyond what it deserves, so as to find anything at all. */
const WEIGHTS = [1.5, 3, 8];

/**
 * Finds the cheapest way from the start to the goal that meets every need. Equal problems give equal answers. What takes two years or more by
 * itself, to the second, is past what is reckoned with: undecided.
 */
export function solve(problem: AccessProblem, caps: SearchCaps = DEFAULT_CAPS): SearchOutcome {
  if (closedOrder(problem.needs).some((before, need) => before.has(need))) return { kind: 'impossible', expanded: 0 };
  const narrowed = withRelevantParts(problem);
  const places = mergedPlaces(problem.walk);
  const scaled = scaledProblem(atMergedPlaces(narrowed.problem, places));
  const always = problem.needs.reduce((sum, need) => sum + need.seconds, 0);
  if (costsOf(scaled.problem).some((seconds) => seconds >= NO_WAY)) return { kind: 'undecided', atLeast: always, expanded: 0 };
  const needs = effectiveNeeds(scaled.problem);
  const run = (weight: number, sums: PatternSums, limit: SearchCaps): RunResult =>
    runSearch(scaled.problem, needs, sums, { weight, caps: limit });
  const tell = (legs: readonly Leg[]): readonly Act[] => actsOf(problem, places, legs, narrowed.moves);
  let sums = disjointSums(scaled.problem, needs, SMALL_PATTERNS);
  let result = run(1, sums, { ...caps, expanded: Math.min(SOON, caps.expanded) });
  if (result.kind === 'capped' && caps.expanded > SOON) {
    sums = disjointSums(scaled.problem, needs, LARGE_PATTERNS);
    result = run(1, sums, { ...caps, expanded: Math.min(LATER, caps.expanded) });
  }
  if (result.kind === 'capped' && caps.expanded > LATER) {
    sums = [...sums, ...shareCosts(scaled.problem, needs)];
    result = run(1, sums, caps);
  }
  const expanded = result.expanded;
  switch (result.kind) {
    case 'found':
      return { kind: 'optimal', acts: tell(result.legs), seconds: result.cost * scaled.unit + always, expanded };
    case 'exhausted':
      return { kind: 'impossible', expanded };
    case 'capped': {
      const atLeast = result.atLeast * scaled.unit + always;
      const fewer = { held: Math.ceil(caps.held / 2), expanded: Math.ceil(caps.expanded / 4) };
      const found = firstFound(WEIGHTS, (weight) => run(weight, sums, fewer));
      if (found === null) return { kind: 'undecided', atLeast, expanded };
      const seconds = found.cost * scaled.unit + always;
      if (seconds === atLeast) return { kind: 'optimal', acts: tell(found.legs), seconds, expanded };
      return { kind: 'bounded', acts: tell(found.legs), seconds, atLeast, expanded };
    }
  }
}

/** One follows how parts hold each other up, the other what needs ask for together. */
const DIVISIONS: readonly BondWeights[] = [
  { move: 4, never: 2, need: 1 },
  { move: 1, never: 1, need: 4 },
];

function disjointSums(problem: AccessProblem, needs: readonly EffectiveNeed[], size: PatternSize): PatternSums {
  const costs = Int32Array.from(problem.moves, (move) => move.seconds);
  const divisions = new Map(
    DIVISIONS.map((weights) => {
      const groups = divideParts(problem, needs, size, weights).map((parts) => [...parts].sort((a, b) => a - b));
      return [
        groups
          .map((parts) => parts.join())
          .sort()
          .join(';'),
        groups,
      ] as const;
    }),
  );
  return [...divisions.values()].map((groups) => groups.map((parts) => new Pattern(new PatternSpace(problem, needs, parts), costs)));
}

function firstFound(weights: readonly number[], run: (weight: number) => RunResult): (RunResult & { readonly kind: 'found' }) | null {
  for (const weight of weights) {
    const result = run(weight);
    if (result.kind === 'found') return result;
  }
  return null;
}

/** For each place the first one that is no walk away from it. */
function mergedPlaces(walk: AccessProblem['walk']): readonly number[] {
  return walk.map((row) => row.indexOf(0));
}

function atMergedPlaces(problem: AccessProblem, merged: readonly number[]): AccessProblem {
  const kept = [...new Set(merged)];
  const single = kept.length <= 1;
  const place = (old: number | null): number | null => (old === null || single ? null : kept.indexOf(itemAt(merged, old)));
  return {
    ...problem,
    moves: problem.moves.map((move) => ({ ...move, place: place(move.place) })),
    needs: problem.needs.map((need) => ({ ...need, place: place(need.place) })),
    start: { ...problem.start, place: place(problem.start.place) },
    walk: single ? [] : kept.map((from) => kept.map((to) => itemAt(itemAt(problem.walk, from), to))),
  };
}

/**
 * Seconds divided by what they have in common. Where nothing takes any time every way is as cheap as any other; then each move counts as
 * one, so that the search has something to go by, and finds a way of few steps.
 */
function scaledProblem(problem: AccessProblem): { readonly problem: AccessProblem; readonly unit: number } {
  const unit = costsOf(problem).reduce(commonDivisor, 0);
  if (unit === 0) return { unit, problem: { ...problem, moves: problem.moves.map((move) => ({ ...move, seconds: 1 })) } };
  return {
    unit,
    problem: {
      ...problem,
      moves: problem.moves.map((move) => ({ ...move, seconds: move.seconds / unit })),
      walk: problem.walk.map((row) => row.map((seconds) => seconds / unit)),
    },
  };
}

/** What each move and each walk takes that there is a way for. */
function costsOf(problem: AccessProblem): readonly number[] {
  return [...problem.moves.map((move) => move.seconds), ...problem.walk.flat().filter(Number.isFinite)];
}

/** Goes the way again in the problem as it was given, doing everything as soon as it can be done. */
function actsOf(problem: AccessProblem, merged: readonly number[], legs: readonly Leg[], moves: readonly number[]): readonly Act[] {
  const kept = [...new Set(merged)];
  const stance = [...problem.start.stance];
  const acts: Act[] = [];
  const done = new Set<number>();
  let here = problem.start.place === null ? null : itemAt(merged, problem.start.place);
  const doAll = (): void => {
    for (let before = -1; before !== done.size;) {
      before = done.size;
      problem.needs.forEach((need, index) => {
        const isHere = need.place === null || kept.length <= 1 || merged[need.place] === here;
        if (done.has(index) || !isHere || !need.after.every((other) => done.has(other)) || !isAllowed(problem, stance, index)) return;
        done.add(index);
        acts.push({ kind: 'need', need: index });
      });
    }
  };
  doAll();
  for (const leg of legs) {
    here = leg.place < 0 ? here : itemAt(kept, leg.place);
    // Whoever has walked to where a part is moved does what can be done there before moving it.
    doAll();
    if (leg.move >= 0) {
      const index = itemAt(moves, leg.move);
      const { part, to } = itemAt(problem.moves, index);
      stance[part] = to;
      acts.push({ kind: 'move', move: index });
    }
    doAll();
  }
  return acts;
}

function isAllowed(problem: AccessProblem, stance: readonly number[], need: number): boolean {
  return holds(itemAt(problem.needs, need).stance, stance) && !problem.nevers.some((never) => holds(never, stance));
}
