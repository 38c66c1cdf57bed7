/**
 * A position that a step needs and that no step leads to.
 */
import type { Machine } from './machine.js';

/** What nothing brings about: `engine`, `running`. */
export interface NeverBrought {
  readonly part: string;
  readonly position: string;
}

/** The first part that each way to do a step wants where it neither rests nor is ever brought; null where it is for another reason that it cannot be done. */
export function neverBrought(machine: Machine, stepId: string): NeverBrought | null {
  const move = machine.moves.find((_, index) => machine.origins[index]?.step.id === stepId && !machine.origins[index].isBack);
  if (move === undefined || move.during.length === 0) return null;
  const attained = attainedIn(machine);
  const wanted = attained.map((_, part) => move.during.reduce((all, box) => all | (box[part] ?? 0), 0));
  wanted[move.part] = 1 << move.from;
  const part = wanted.findIndex((positions, index) => (positions & (attained[index] ?? 0)) === 0);
  const named = machine.graph.access.parts[part];
  const position = named?.positions.find((_, index) => ((wanted[part] ?? 0) & (1 << index)) !== 0);
  return named === undefined || position === undefined ? null : { part: named.id, position: position.name };
}

/** For each part the positions, as bits, in which it rests or to which some step brings it. */
function attainedIn(machine: Machine): readonly number[] {
  const attained = machine.rest.map((position) => 1 << position);
  for (const { part, to } of machine.moves) attained[part] = (attained[part] ?? 0) | (1 << to);
  return attained;
}
