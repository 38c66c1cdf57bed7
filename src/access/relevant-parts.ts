/**
 * Leaves out of a problem the parts that cannot matter to its answer.
 *
 * A part matters if something to be done, or the end, asks something of it; if a part that matters can only be moved while it is
 * somewhere; if a never-rule ties it to a part that matters; or if a never-rule is broken as the machine stands. Moving any other
 * part only adds to the cost, so leaving it where it is loses no optimum.
 */
import { itemAt } from './item-at.js';
import type { AccessProblem, Move } from './problem.js';
import type { StanceSet } from './stance-set.js';
import { holds, partsNamed } from './stance-set.js';

/** The smaller problem, and for each of its moves the index of that move in the whole one. Needs keep their indexes. */
export interface Narrowed {
  readonly problem: AccessProblem;
  readonly moves: readonly number[];
}

export function withRelevantParts(problem: AccessProblem): Narrowed {
  const kept = relevantParts(problem);
  const order = problem.parts.flatMap((_, part) => (kept.has(part) ? [part] : []));
  const narrow = (set: StanceSet): StanceSet => set.map((box) => order.map((part) => box[part] ?? 0));
  const moves = problem.moves.flatMap((move, index) => (kept.has(move.part) ? [index] : []));
  return {
    moves,
    problem: {
      ...problem,
      parts: order.map((part) => problem.parts[part] ?? 0),
      moves: moves.map((index) => {
        const move = itemAt(problem.moves, index);
        return { ...move, part: order.indexOf(move.part), during: narrow(move.during) };
      }),
      nevers: problem.nevers.filter((set) => partsNamed(set, problem.parts).every((part) => kept.has(part))).map(narrow),
      needs: problem.needs.map((need) => ({ ...need, stance: narrow(need.stance) })),
      start: { ...problem.start, stance: order.map((part) => problem.start.stance[part] ?? 0) },
      goal: order.map((part) => problem.goal[part] ?? null),
    },
  };
}

function relevantParts(problem: AccessProblem): ReadonlySet<number> {
  const kept = new Set<number>();
  const open: number[] = [];
  const keep = (part: number): void => {
    if (!kept.has(part)) open.push(part);
    kept.add(part);
  };
  const named = (set: StanceSet): readonly number[] => partsNamed(set, problem.parts);
  for (const need of problem.needs) named(need.stance).forEach(keep);
  problem.goal.forEach((position, part) => {
    if (position !== null && position !== problem.start.stance[part]) keep(part);
  });
  const nevers = problem.nevers.map((set) => ({ set, parts: named(set) }));
  for (const never of nevers) if (holds(never.set, problem.start.stance)) never.parts.forEach(keep);
  const movesOf = movesByPart(problem);
  for (let part = open.pop(); part !== undefined; part = open.pop()) {
    const here = part;
    for (const move of itemAt(movesOf, here)) named(move.during).forEach(keep);
    for (const never of nevers) if (never.parts.includes(here)) never.parts.forEach(keep);
  }
  return kept;
}

function movesByPart(problem: AccessProblem): readonly (readonly Move[])[] {
  const byPart: Move[][] = problem.parts.map(() => []);
  for (const move of problem.moves) itemAt(byPart, move.part).push(move);
  return byPart;
}
