/**
 * What stands in the way of a stance that cannot be reached.
 */
import type { Never } from '../graph/rule-graph.js';
import { BucketQueue } from './bucket-queue.js';
import { itemAt } from './item-at.js';
import type { Machine } from './machine.js';
import type { Stance, StanceSet } from './stance-set.js';
import type { Way } from './stance-space.js';
import { StanceTable } from './stance-table.js';

/** The steps that can be taken, then the move that cannot be made, and the never-rule that forbids it, where it is not the step's own condition. */
export interface Blocked {
  readonly kind: 'blocked';
  readonly way: Way;
  readonly move: number;
  readonly never: Never | undefined;
}

/** `no-steps`: nothing leads there even where no rule counts. `given-up`: not found in as many stances as were to be looked at. */
export type Blockage = Blocked | { readonly kind: 'no-steps' } | { readonly kind: 'given-up' };

/** Which question is asked: the parts that may move, and how many stances may be looked at. */
export interface BlockageLimits {
  readonly moves: (part: number) => boolean;
  readonly most: number;
}

/**
 * The way from `start` into `target` that breaks the fewest rules, then takes the fewest steps, up to the first rule it breaks.
 *
 * @throws RangeError if some way there breaks none: to be asked of what cannot be reached.
 */
export function whatBlocks(machine: Machine, start: Stance, target: StanceSet, limits: BlockageLimits): Blockage {
  const own = machine.moves.flatMap((move, index) => (limits.moves(move.part) ? [index] : []));
  const ownMoves = own.map((index) => itemAt(machine.moves, index));
  const table = new StanceTable(machine.sizes, ownMoves, machine.nevers);
  const latest: number[] = [];
  const found: Found[] = [];
  const queue = new BucketQueue();
  const reach = (stance: number, from: number, move: number, cost: number): void => {
    const known = latest[stance];
    if (known !== undefined && itemAt(found, known).cost <= cost) return;
    latest[stance] = found.push({ stance, from, move, cost }) - 1;
    queue.push(found.length - 1, cost);
  };
  const wanted = table.test(target);
  reach(table.numberOf(start), -1, -1, 0);
  while (!queue.isEmpty) {
    if (found.length >= limits.most) return { kind: 'given-up' };
    const number = queue.pop();
    const here = itemAt(found, number);
    if (latest[here.stance] !== number) continue;
    if (table.passes(here.stance, wanted)) return firstBreach(machine, table, found, number, own);
    for (let move = 0; move < ownMoves.length; move++) {
      if (!table.begins(here.stance, move)) continue;
      const next = table.after(here.stance, move);
      reach(next, number, move, here.cost + 1 + breaches(table, move, here.stance, next));
    }
  }
  return { kind: 'no-steps' };
}

interface Found {
  readonly stance: number;
  readonly from: number;
  readonly move: number;
  readonly cost: number;
}

/** A step whose own condition fails cannot be done at all; a never-rule could be broken, which is what the author has to see. */
const CANNOT = 1000;
const MUST_NOT = 100;

function breaches(table: StanceTable, move: number, before: number, after: number): number {
  return (table.allows(before, move) ? 0 : CANNOT) + (table.isForbidden(after) ? MUST_NOT : 0);
}

function firstBreach(machine: Machine, table: StanceTable, found: readonly Found[], end: number, own: readonly number[]): Blocked {
  const chain: (Found & { readonly before: number })[] = [];
  for (let step = itemAt(found, end); step.from >= 0; step = itemAt(found, step.from))
    chain.unshift({ ...step, before: itemAt(found, step.from).stance });
  const at = chain.findIndex((step) => breaches(table, step.move, step.before, step.stance) > 0);
  const { move, before, stance } = itemAt(chain, at);
  const rule = (): Never | undefined =>
    machine.graph.access.nevers[machine.nevers.findIndex((set) => table.passes(stance, table.test(set)))];
  return {
    kind: 'blocked',
    way: chain.slice(0, at).map((step) => itemAt(own, step.move)),
    move: itemAt(own, move),
    never: table.allows(before, move) ? rule() : undefined,
  };
}
