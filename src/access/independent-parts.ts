/**
 * Which parts of a machine have to do with each other.
 *
 * Two parts have if a step of the one asks something of the other, if a never-rule names both, or if a stance that is asked for is an
 * alternative that speaks of both ("this open or that off"). Parts of different groups move as if the others were not there: a
 * stance can be reached if it can be reached group by group, and the ways of the groups can be gone one after the other.
 */
import { itemAt } from './item-at.js';
import type { MovingParts } from './machine.js';
import type { StanceSet } from './stance-set.js';
import { holds, partsNamed } from './stance-set.js';

/** The groups, each in the order of the parts; every part is in one. `wanted` are the stances that will be asked about. */
export function independentParts(machine: MovingParts, wanted: readonly StanceSet[]): readonly (readonly number[])[] {
  const { sizes, moves, nevers, rest } = machine;
  const every = sizes.map((_, part) => part);
  // Where a rule is broken as the machine stands, no other part may move until that is mended: then all hang together.
  if (nevers.some((never) => holds(never, rest))) return [every];
  const groupOf = [...every];
  const link = (parts: readonly number[]): void => {
    const linked = new Set(parts.map((part) => itemAt(groupOf, part)));
    const into = Math.min(...linked);
    for (const [part, group] of groupOf.entries()) if (linked.has(group)) groupOf[part] = into;
  };
  for (const move of moves) link([move.part, ...partsNamed(move.during, sizes)]);
  for (const never of nevers) link(partsNamed(never, sizes));
  for (const set of wanted) link(every.filter((part) => doesVary(set, part)));
  const groups = new Map<number, number[]>();
  groupOf.forEach((group, part) => groups.set(group, [...(groups.get(group) ?? []), part]));
  return [...groups.values()];
}

/** Whether the boxes of a set ask different things of a part: of all other parts the set says one thing, whatever these do. */
function doesVary(set: StanceSet, part: number): boolean {
  return new Set(set.map((box) => box[part])).size > 1;
}
