/**
 * Every stance of a machine that can be reached, group by group of parts that have nothing to do with each other.
 *
 * Ten valves that turn as they like have 1024 stances together, but nothing can be said of them that ten times two do not say.
 */
import { independentParts } from './independent-parts.js';
import type { MovingParts } from './machine.js';
import type { StanceSet } from './stance-set.js';
import { join, NO_STANCE } from './stance-set.js';
import type { StanceSpace, Way } from './stance-space.js';
import { exploreWith } from './stance-space.js';

/** Parts that depend on one another, and all that they can do while the others rest. */
export interface PartGroup {
  readonly parts: ReadonlySet<number>;
  readonly space: StanceSpace;
}

export interface MachineSpace {
  readonly groups: readonly PartGroup[];
  /** False: at least one group has more stances than were looked at. */
  readonly isWhole: boolean;
  /** The first group in which what a set asks for cannot be reached; `null`: it can be, or that group was not gone through. */
  readonly unreachableIn: (set: StanceSet) => PartGroup | null;
  /** The way from rest into a set with the fewest steps; `null`: none was found. */
  readonly wayInto: (set: StanceSet) => Way | null;
}

/** Goes through up to `most` stances, of all groups together. `wanted` are the sets that will be asked about. */
export function machineSpace(machine: MovingParts, wanted: readonly StanceSet[], most: number): MachineSpace {
  let left = most;
  const groups = independentParts(machine, wanted).map((list): PartGroup => {
    const parts = new Set(list);
    const space = exploreWith(machine, left, (part) => parts.has(part));
    left = Math.max(1, left - space.size);
    return { parts, space };
  });
  const nearest = (group: PartGroup, set: StanceSet): number => group.space.nearest(askedOf(machine, group, set));
  return {
    groups,
    isWhole: groups.every(({ space }) => space.isWhole),
    unreachableIn: (set) => groups.find((group) => group.space.isWhole && nearest(group, set) < 0) ?? null,
    wayInto: (set) => {
      const found = groups.map((group) => ({ group, stance: nearest(group, set) }));
      return found.some(({ stance }) => stance < 0) ? null : found.flatMap(({ group, stance }) => group.space.wayTo(stance));
    },
  };
}

/** What a set asks of one group of parts. */
export function askedOf(machine: Pick<MovingParts, 'sizes'>, group: Pick<PartGroup, 'parts'>, set: StanceSet): StanceSet {
  const boxes = set.map((box) => box.map((mask, part) => (group.parts.has(part) ? mask : 2 ** (machine.sizes[part] ?? 0) - 1)));
  return join(NO_STANCE, boxes) ?? boxes;
}
