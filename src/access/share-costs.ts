/**
 * Patterns that look at the same parts without counting a second twice.
 *
 * Small patterns that overlap often say more together than large ones that do not. Each takes, in turn, only as much of each move's cost
 * as its own answers need, and leaves the rest to the next (saturated cost partitioning; Seipp, Keller and Helmert, "Saturated Cost
 * Partitioning for Optimal Classical Planning", Journal of Artificial Intelligence Research 67, 2020).
 */
import { bondsBetween, type Bonds } from './divide-parts.js';
import type { EffectiveNeed } from './effective-needs.js';
import { Pattern, type MoveCosts } from './pattern.js';
import { distinctDemands } from './pattern-demands.js';
import { PatternSpace } from './pattern-space.js';
import type { AccessProblem } from './problem.js';

/** What a pattern says of the start, and how much of the moves' costs it takes to say that. */
interface Candidate {
  readonly space: PatternSpace;
  readonly says: number;
  readonly takes: number;
}

/** How many patterns of one, two, three parts are made larger by one part, and how many stances times sets of demands are looked at. */
const EXTENDED = [Infinity, 6, 4];
const LARGEST_TABLE = 65_536;
const MOST_GROUPS = 100;

/** Two lists of patterns; in each the bounds add up. In one those come first that say much for what they take, in the other those that say most. */
export function shareCosts(problem: AccessProblem, needs: readonly EffectiveNeed[]): readonly (readonly Pattern[])[] {
  const costs = Int32Array.from(problem.moves, (move) => move.seconds);
  const candidates = candidatesFor(problem, needs, costs);
  const orders = [(each: Candidate) => each.says / each.takes, (each: Candidate) => each.says];
  return orders.map((worth) =>
    shared(
      problem,
      costs,
      [...candidates].sort((a, b) => worth(b) - worth(a)),
    ),
  );
}

function shared(problem: AccessProblem, costs: MoveCosts, candidates: readonly Candidate[]): readonly Pattern[] {
  const left = costs.slice();
  const chosen: Pattern[] = [];
  for (const { space } of candidates) {
    if (space.edges.move.every((move) => left[move] === 0)) continue;
    const pattern = new Pattern(space, left);
    if (atStart(problem, pattern) === 0) continue;
    pattern.saturate(costs.length).forEach((taken, move) => (left[move] = (left[move] ?? 0) - taken));
    chosen.push(pattern);
  }
  return chosen;
}

/** Each part alone, each two that are tied to each other, and of larger groups those that grow out of what most gains by being seen together. */
function candidatesFor(problem: AccessProblem, needs: readonly EffectiveNeed[], costs: MoveCosts): readonly Candidate[] {
  const bonds = bondsBetween(problem, needs, { move: 1, never: 1, need: 1 });
  const alone = problem.parts.map((_, part) => candidateFor(problem, needs, costs, [part]));
  const gain = ({ space, says }: Candidate): number => space.parts.reduce((left, part) => left - (alone[part]?.says ?? 0), says);
  const all = [...alone];
  let level: readonly Candidate[] = alone;
  for (const count of EXTENDED) {
    const best = [...level].sort((a, b) => gain(b) - gain(a)).slice(0, count);
    const groups = new Map(best.flatMap(({ space }) => withOneMore(bonds, space.parts)).map((parts) => [parts.join(), parts]));
    const fitting = [...groups.values()].filter((parts) => fits(problem, needs, parts)).slice(0, MOST_GROUPS);
    level = fitting.map((parts) => candidateFor(problem, needs, costs, parts));
    all.push(...level);
  }
  return all;
}

function candidateFor(problem: AccessProblem, needs: readonly EffectiveNeed[], costs: MoveCosts, parts: readonly number[]): Candidate {
  const space = new PatternSpace(problem, needs, parts);
  const pattern = new Pattern(space, costs);
  const says = atStart(problem, pattern);
  return { space, says, takes: pattern.saturate(costs.length).reduce((sum, cost) => sum + cost, 1) };
}

function atStart(problem: AccessProblem, pattern: Pattern): number {
  const { space } = pattern;
  return pattern.seconds(pattern.row(space.openDemands(() => false)), space.numberOf(problem.start.stance));
}

/** The group with each of the parts that are tied to one of it, in the order of the parts. */
function withOneMore(bonds: Bonds, parts: readonly number[]): readonly (readonly number[])[] {
  return bonds.flatMap((row, part) =>
    parts.includes(part) || !parts.some((other) => (row[other] ?? 0) > 0) ? [] : [[...parts, part].sort((a, b) => a - b)],
  );
}

function fits(problem: AccessProblem, needs: readonly EffectiveNeed[], parts: readonly number[]): boolean {
  const size = parts.reduce((product, part) => product * (problem.parts[part] ?? 1), 1);
  return size * 2 ** distinctDemands(problem, needs, parts).sets.length <= LARGEST_TABLE;
}
