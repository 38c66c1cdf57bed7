/**
 * What the search has to keep track of: equal needs as one, and those that a stricter one brings along not at all.
 *
 * A need may be dropped for a stricter one only if whoever meets the stricter one can meet it in the same breath, and if nobody
 * waits for it who could have gone ahead earlier: so nothing that it must follow may be missing from what the stricter one
 * follows, and nothing may follow it that does not follow the stricter one too.
 */
import { itemAt } from './item-at.js';
import type { AccessProblem, Need } from './problem.js';
import { surelyImplies } from './stance-set.js';

/** One distinct need, with what it must come after as indexes of distinct needs. */
export interface EffectiveNeed {
  readonly stance: Need['stance'];
  readonly place: number | null;
  readonly after: readonly number[];
}

export function effectiveNeeds(problem: AccessProblem): readonly EffectiveNeed[] {
  const before = closedOrder(problem.needs);
  const behind = problem.needs.map(() => new Set<number>());
  before.forEach((set, other) => set.forEach((index) => itemAt(behind, index).add(other)));
  const kept: number[] = [];
  const dropped = new Set<number>();
  const brings = (strict: number, loose: number): boolean => bringsAlong(problem.needs, before, behind, strict, loose);
  problem.needs.forEach((_, index) => {
    const byOther = problem.needs.some((__, other) => {
      if (dropped.has(other) || !brings(other, index)) return false;
      return other < index || !brings(index, other);
    });
    if (byOther) dropped.add(index);
    else kept.push(index);
  });
  const renumbered = new Map(kept.map((need, index) => [need, index]));
  return kept.map((index) => {
    const { stance, place } = itemAt(problem.needs, index);
    const after = [...itemAt(before, index)].flatMap((other) => renumbered.get(other) ?? []);
    return { stance, place, after };
  });
}

/** For each need everything that must come before it, through any number of rules. A need in a circle comes before itself. */
export function closedOrder(needs: readonly Need[]): readonly ReadonlySet<number>[] {
  return needs.map((need) => {
    const before = new Set<number>();
    const open = [...need.after];
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      if (before.has(next)) continue;
      before.add(next);
      open.push(...itemAt(needs, next).after);
    }
    return before;
  });
}

type Order = readonly ReadonlySet<number>[];

function bringsAlong(needs: readonly Need[], before: Order, behind: Order, strict: number, loose: number): boolean {
  const [one, other] = [itemAt(needs, strict), itemAt(needs, loose)];
  if (other.place !== null && other.place !== one.place) return false;
  // By size first, in both directions: in a long chain of orders what comes before more has less behind it, so that no set need be gone through.
  const [earlier, earlierOfStrict] = [itemAt(before, loose), itemAt(before, strict)];
  const [later, laterOfStrict] = [itemAt(behind, loose), itemAt(behind, strict)];
  return (
    mayBeWithin(earlier, earlierOfStrict, strict) &&
    mayBeWithin(later, laterOfStrict, strict) &&
    isWithin(earlier, earlierOfStrict, strict) &&
    isWithin(later, laterOfStrict, strict) &&
    surelyImplies(one.stance, other.stance)
  );
}

/** Whether the sizes of two sets leave room for {@link isWithin}. */
function mayBeWithin(smaller: ReadonlySet<number>, larger: ReadonlySet<number>, aside: number): boolean {
  return smaller.size <= larger.size + (smaller.has(aside) ? 1 : 0);
}

/** Whether the larger set has all that the smaller one has, but for `aside`. */
function isWithin(smaller: ReadonlySet<number>, larger: ReadonlySet<number>, aside: number): boolean {
  for (const need of smaller) if (need !== aside && !larger.has(need)) return false;
  return true;
}
