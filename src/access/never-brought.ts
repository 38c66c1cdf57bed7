/**
 * A position that a step needs and that no step leads to.
 */
import { itemAt } from './item-at.js';
import type { Machine } from './machine.js';
import type { Box } from './stance-set.js';

/** What nothing brings about: `engine`, `running`. */
export interface NeverBrought {
  readonly part: string;
  readonly position: string;
}

/** The first part that each way to do a step wants where it neither rests nor is ever brought; null where it is for another reason that it cannot be done. */
export function neverBrought(machine: Machine, stepId: string): NeverBrought | null {
  // The way there comes before the way back.
  const move = itemAt(
    machine.moves,
    machine.origins.findIndex(({ step }) => step.id === stepId),
  );
  if (move.during.length === 0) return null;
  const wanted = machine.sizes.map((_, part) => move.during.reduce((all, box) => all | (box[part] ?? 0), 0));
  wanted[move.part] = 1 << move.from;
  return notAttained(machine, wanted);
}

/** Of the positions (bits) wanted of each part, the first of the first part that neither rests in one of them nor is brought to one; null if each is. */
export function notAttained(machine: Machine, wanted: Box): NeverBrought | null {
  const attained = attainedIn(machine);
  const part = wanted.findIndex((positions, index) => (positions & (attained[index] ?? 0)) === 0);
  if (part < 0) return null;
  const { id, positions } = itemAt(machine.graph.access.parts, part);
  const lowest = 31 - Math.clz32(itemAt(wanted, part) & -itemAt(wanted, part));
  return { part: id, position: itemAt(positions, lowest).name };
}

/** For each part the positions, as bits, in which it rests or to which some step brings it. */
function attainedIn(machine: Machine): readonly number[] {
  const attained = machine.rest.map((position) => 1 << position);
  for (const { part, to } of machine.moves) attained[part] = (attained[part] ?? 0) | (1 << to);
  return attained;
}
