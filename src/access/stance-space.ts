/**
 * Every stance that can be reached from rest, with the fewest steps to each, and the ways back.
 */
import { itemAt } from './item-at.js';
import type { MovingParts } from './machine.js';
import type { Stance, StanceSet } from './stance-set.js';
import type { Exits } from './stance-table.js';
import { StanceTable } from './stance-table.js';

/** A chain of moves (indexes of the machine's moves). */
export type Way = readonly number[];

/** Stances are numbered in order of fewest steps from rest, which is 0. */
export interface StanceSpace {
  readonly size: number;
  /** False: there are more than were looked at. */
  readonly isWhole: boolean;
  readonly stance: (number: number) => Stance;
  /** Moves out of a stance, each with the stance that it leads to. */
  readonly exits: (stance: number) => Exits;
  /** The way from rest with the fewest steps. */
  readonly wayTo: (stance: number) => Way;
  /** Can rest be reached from it? */
  readonly returns: (stance: number) => boolean;
  /** The first stance, in order of steps, that lies in the set; −1 if none does. */
  readonly nearest: (set: StanceSet) => number;
  /** For each stance 1 if it lies in the set. */
  readonly members: (set: StanceSet) => Uint8Array;
}

const NO_EXITS: Exits = /* @__PURE__ */ new Int32Array(0);

/** Looks at up to `most` stances, and at sixteen ways out of each on the average; stops there. */
export function exploreStances(machine: MovingParts, most: number): StanceSpace {
  return exploreWith(machine, most, () => true);
}

/** The same, with only those parts moving that are let; the others stay as at rest. */
export function exploreWith(machine: MovingParts, most: number, moves: (part: number) => boolean): StanceSpace {
  const own = machine.moves.flatMap((move, index) => (moves(move.part) ? [index] : []));
  const ownMoves = own.map((index) => itemAt(machine.moves, index));
  const table = new StanceTable(machine.sizes, ownMoves, machine.nevers);
  const exits: Exits[] = [];
  // Nothing leads to rest, where every way begins: what stands there for it is never read.
  const came: Came = { from: [0], by: [0] };
  let ways = 0;
  table.numberOf(machine.rest);
  for (let here = 0; here < table.size && table.size <= most && ways <= 16 * most; here++) {
    const out = table.exits(here).map((value, index) => (index % 2 === 0 ? itemAt(own, value) : value));
    for (let index = 0; index < out.length; index += 2) {
      if (out[index + 1] !== came.from.length) continue;
      came.from.push(here);
      came.by.push(itemAt(out, index));
    }
    exits.push(out);
    ways += out.length / 2;
  }
  const isWhole = exits.length === table.size;
  while (exits.length < table.size) exits.push(NO_EXITS);
  return spaceOf(table, exits, came, isWhole);
}

/** For each stance the one that it was first reached from, and by which move. */
interface Came {
  readonly from: number[];
  readonly by: number[];
}

function spaceOf(table: StanceTable, exits: readonly Exits[], came: Came, isWhole: boolean): StanceSpace {
  let returns: Uint8Array | null = null;
  const wayTo = (stance: number): Way => {
    const way: number[] = [];
    for (let at = stance; at !== 0; at = itemAt(came.from, at)) way.push(itemAt(came.by, at));
    return way.reverse();
  };
  return {
    size: exits.length,
    isWhole,
    stance: (number) => table.stance(number),
    exits: (stance) => exits[stance] ?? NO_EXITS,
    wayTo,
    returns: (stance) => (returns ??= returning(exits))[stance] === 1,
    nearest: (set) => {
      const test = table.test(set);
      for (let stance = 0; stance < exits.length; stance++) if (table.passes(stance, test)) return stance;
      return -1;
    },
    members: (set) => {
      const test = table.test(set);
      return Uint8Array.from(exits, (_, stance) => (table.passes(stance, test) ? 1 : 0));
    },
  };
}

function returning(exits: readonly Exits[]): Uint8Array {
  const into = reversed(exits);
  const returns = new Uint8Array(exits.length);
  returns[0] = 1;
  const open = [0];
  for (let stance = open.pop(); stance !== undefined; stance = open.pop()) {
    for (let link = into.first[stance] ?? 0; link < (into.first[stance + 1] ?? 0); link++) {
      const from = into.from[link] ?? 0;
      if (returns[from] === 1) continue;
      returns[from] = 1;
      open.push(from);
    }
  }
  return returns;
}

/** Ways into each stance: those of stance *s* are at `first[s]` up to `first[s + 1]`. */
export interface WaysIn {
  readonly first: Int32Array;
  readonly from: Int32Array;
  readonly move: Int32Array;
}

export function reversed(exits: readonly Exits[]): WaysIn {
  const first = new Int32Array(exits.length + 2);
  for (const out of exits)
    for (let index = 1; index < out.length; index += 2) first[(out[index] ?? 0) + 2] = (first[(out[index] ?? 0) + 2] ?? 0) + 1;
  for (let stance = 2; stance < first.length; stance++) first[stance] = (first[stance] ?? 0) + (first[stance - 1] ?? 0);
  const total = first[exits.length + 1] ?? 0;
  const ways = { first, from: new Int32Array(total), move: new Int32Array(total) };
  exits.forEach((out, from) => {
    for (let index = 0; index < out.length; index += 2) {
      const to = out[index + 1] ?? 0;
      const link = first[to + 1] ?? 0;
      first[to + 1] = link + 1;
      ways.from[link] = from;
      ways.move[link] = out[index] ?? 0;
    }
  });
  return ways;
}
