/**
 * Every stance that can be reached from rest, with the fewest steps to each, and the ways back.
 */
import { BucketQueue } from './bucket-queue.js';
import type { Machine } from './machine.js';
import type { Stance, StanceSet } from './stance-set.js';
import { holds } from './stance-set.js';

/** A chain of moves (indexes of the machine's moves). */
export type Way = readonly number[];

export interface StanceSpace {
  /** In order of fewest steps from rest, which is the first. */
  readonly stances: readonly Stance[];
  /** False: there are more than were looked at. */
  readonly isWhole: boolean;
  /** Moves out of each stance, with the stance that they lead to. */
  readonly exits: readonly (readonly { readonly move: number; readonly to: number }[])[];
  /** For each stance the way to it from rest with the fewest steps. */
  readonly wayTo: (stance: number) => Way;
  /** Can rest be reached from it? */
  readonly returns: readonly boolean[];
  /** The first stance, in order of steps, that lies in the set; −1 if none does. */
  readonly nearest: (set: StanceSet) => number;
}

/** Looks at up to `most` stances, and at sixteen ways out of each on the average; stops there. */
export function exploreStances(machine: Machine, most: number): StanceSpace {
  const numbers = new Map([[keyOf(machine.rest), 0]]);
  const stances: Stance[] = [machine.rest];
  const came: { readonly from: number; readonly move: number }[] = [{ from: -1, move: -1 }];
  const exits: { move: number; to: number }[][] = [];
  let isWhole = true;
  let ways = 0;
  for (let here = 0; isWhole && here < stances.length; here++) {
    const out = (exits[here] = [] as { move: number; to: number }[]);
    for (const { move, stance } of movesFrom(machine, stances[here] ?? [])) {
      let to = numbers.get(keyOf(stance));
      if (to === undefined && stances.length >= most) isWhole = false;
      else if (to === undefined) {
        to = stances.push(stance) - 1;
        numbers.set(keyOf(stance), to);
        came.push({ from: here, move });
      }
      if (to !== undefined) out.push({ move, to });
    }
    ways += out.length;
    if (ways > 16 * most) isWhole = false;
  }
  const wayTo = (stance: number): Way => {
    const way: number[] = [];
    for (let step = came[stance]; step !== undefined && step.from >= 0; step = came[step.from]) way.push(step.move);
    return way.reverse();
  };
  return { stances, isWhole, exits, wayTo, returns: returning(exits), nearest: (set) => stances.findIndex((stance) => holds(set, stance)) };
}

/** The moves that can be made, with the stance that each leads to. */
export function movesFrom(machine: Machine, stance: Stance): readonly { readonly move: number; readonly stance: Stance }[] {
  return machine.moves.flatMap((move, index) => {
    if (stance[move.part] !== move.from || !holds(move.during, stance)) return [];
    const next = stance.map((position, part) => (part === move.part ? move.to : position));
    return machine.nevers.some((never) => holds(never, next)) ? [] : [{ move: index, stance: next }];
  });
}

/** What stands in the way: the steps that can be taken, then the move that cannot be made, and the never-rule that forbids it, if it is one. */
export interface Blocked {
  readonly way: Way;
  readonly move: number;
  /** Index of a never-rule; `null`: the step's own condition. */
  readonly never: number | null;
}

/**
 * The way from `start` into `target` that breaks the fewest rules, then takes the fewest steps, up to the first rule it breaks;
 * `null` if no steps lead there even so, or more than `most` stances would have to be looked at.
 */
export function whatBlocks(machine: Machine, start: Stance, target: StanceSet, most: number): Blocked | null {
  const numbers = new Map<string, number>();
  const found: { readonly stance: Stance; readonly from: number; readonly move: number; readonly cost: number }[] = [];
  const queue = new BucketQueue();
  const reach = (stance: Stance, from: number, move: number, cost: number): void => {
    const known = numbers.get(keyOf(stance));
    if (known !== undefined && (found[known]?.cost ?? 0) <= cost) return;
    const number = found.push({ stance, from, move, cost }) - 1;
    numbers.set(keyOf(stance), number);
    queue.push(number, cost);
  };
  reach(start, -1, -1, 0);
  while (!queue.isEmpty && found.length < most) {
    const number = queue.pop();
    const here = found[number];
    if (here === undefined || numbers.get(keyOf(here.stance)) !== number) continue;
    if (holds(target, here.stance)) return firstBreach(machine, found, number);
    machine.moves.forEach((move, index) => {
      if (here.stance[move.part] !== move.from) return;
      const next = here.stance.map((position, part) => (part === move.part ? move.to : position));
      reach(next, number, index, here.cost + 1 + breaches(machine, index, here.stance, next));
    });
  }
  return null;
}

/** A step whose own condition fails cannot be done at all; a never-rule could be broken, which is what the author has to see. */
const CANNOT = 1000;
const MUST_NOT = 100;

function breaches(machine: Machine, move: number, before: Stance, after: Stance): number {
  const isAllowed = holds(machine.moves[move]?.during ?? [], before);
  return (isAllowed ? 0 : CANNOT) + (machine.nevers.some((never) => holds(never, after)) ? MUST_NOT : 0);
}

function firstBreach(
  machine: Machine,
  found: readonly { readonly stance: Stance; readonly from: number; readonly move: number }[],
  end: number,
): Blocked | null {
  const chain = [];
  for (let step = found[end]; step !== undefined && step.from >= 0; step = found[step.from])
    chain.push({ ...step, before: found[step.from]?.stance ?? [] });
  const way: number[] = [];
  for (const step of chain.reverse()) {
    if (breaches(machine, step.move, step.before, step.stance) > 0) {
      const never = machine.nevers.findIndex((set) => holds(set, step.stance));
      return { way, move: step.move, never: holds(machine.moves[step.move]?.during ?? [], step.before) ? never : null };
    }
    way.push(step.move);
  }
  return null;
}

function returning(exits: readonly (readonly { readonly to: number }[])[]): readonly boolean[] {
  const into: number[][] = exits.map(() => []);
  exits.forEach((out, from) => out.forEach(({ to }) => into[to]?.push(from)));
  const returns = exits.map((_, stance) => stance === 0);
  const open = [0];
  for (let stance = open.pop(); stance !== undefined; stance = open.pop()) {
    for (const from of into[stance] ?? []) {
      if (returns[from] === true) continue;
      returns[from] = true;
      open.push(from);
    }
  }
  return returns;
}

function keyOf(stance: Stance): string {
  return stance.join();
}
