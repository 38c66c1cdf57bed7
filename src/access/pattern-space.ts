/**
 * The stances of a few parts taken alone, numbered, with the moves between them and what the needs ask of them.
 *
 * Only stances that can be reached from where the parts stand are considered; a condition on a forgotten part is read as met.
 */
import { addTo } from '../base/gather.js';
import type { EffectiveNeed } from './effective-needs.js';
import { NO_WAY } from './no-way.js';
import { distinctDemands } from './pattern-demands.js';
import type { AccessProblem, Move } from './problem.js';
import type { Box, Stance, StanceSet } from './stance-set.js';

export class PatternSpace {
  readonly parts: readonly number[];
  /** How many stances these parts have together, reached or not. */
  readonly size: number;
  /** Stances that can be reached, in the order in which that was found. */
  readonly reached: Int32Array;
  /** For each stance the demands that it meets. */
  readonly meets: Int32Array;
  /** The reached stances, those together that meet the same demands. */
  readonly alike: readonly { readonly meets: number; readonly stances: Int32Array }[];
  /** For each demand the others that are met wherever it is. */
  readonly brings: readonly number[];
  /** Reached stances in which these parts may end. */
  readonly ends: Int32Array;
  /** Do these moves have places at all? */
  readonly tellsPlaces: boolean;
  /** Moves, one after the other: which it is, from which stance, to which; in the order of the stances that they begin at. */
  readonly edges: Edges;
  readonly #sizes: readonly number[];
  /** For each need the bit of its demand, 0 if it asks nothing of these parts. */
  readonly #demandOf: Int32Array;

  constructor(problem: AccessProblem, needs: readonly EffectiveNeed[], parts: readonly number[]) {
    this.parts = parts;
    this.#sizes = parts.map((part) => problem.parts[part] ?? 1);
    this.size = this.#sizes.reduce((size, positions) => size * positions, 1);
    const demands = distinctDemands(problem, needs, parts);
    this.#demandOf = Int32Array.from(demands.ofNeed);
    const { reached, edges } = this.#explore(problem);
    this.reached = reached;
    this.tellsPlaces = edges.places.some((places) => places !== 0);
    this.edges = edges;
    const members = demands.sets.map((boxes) => this.#members(boxes));
    this.meets = new Int32Array(this.size);
    members.forEach((set, bit) => set.forEach((met, stance) => (this.meets[stance] = (this.meets[stance] ?? 0) | (met << bit))));
    this.alike = this.#alike();
    this.brings = members.map((set, bit) => this.#brought(set, members) & ~(1 << bit));
    const isEnd = this.#members([parts.map((part, index) => goalMask(problem.goal[part] ?? null, this.#sizes[index] ?? 1))]);
    this.ends = this.reached.filter((stance) => isEnd[stance] === 1);
  }

  /** The number that a stance of the whole machine has here. */
  numberOf(stance: Stance): number {
    return this.parts.reduceRight((sum, part, index) => sum * (this.#sizes[index] ?? 1) + (stance[part] ?? 0), 0);
  }

  /** The open demands, of needs that are not done, without those that another open one brings along. */
  openDemands(isDone: (need: number) => boolean): number {
    let open = 0;
    for (let need = 0; need < this.#demandOf.length; need++) {
      const bit = this.#demandOf[need] ?? 0;
      if (bit !== 0 && (open & bit) === 0 && !isDone(need)) open |= bit;
    }
    let needed = open;
    for (let bit = 0; bit < this.brings.length; bit++) if ((open & (1 << bit)) !== 0) needed &= ~(this.brings[bit] ?? 0);
    return needed;
  }

  /**
   * Lowers the numbers of a row of `seconds` until no move leads to anything cheaper: sweeps to and fro over the moves, which for as few
   * stances as these is faster than any queue.
   */
  spreadSeconds(seconds: Int32Array, row: number, costs: Int32Array): void {
    const { from, to } = this.edges;
    const last = from.length - 1;
    for (let [again, forth] = [true, false]; again; forth = !forth) {
      again = false;
      for (let count = last, edge = forth ? 0 : last; count >= 0; count--, edge += forth ? 1 : -1) {
        const here = row + (from[edge] ?? 0);
        const through = (seconds[row + (to[edge] ?? 0)] ?? 0) + (costs[edge] ?? 0);
        if (through >= (seconds[here] ?? 0)) continue;
        seconds[here] = through;
        again = true;
      }
    }
  }

  /**
   * A place must still be visited if every way on either goes there at once or must visit it later: the greatest fixpoint of that. Stances
   * that meet an open demand, or may be the end, are settled beforehand.
   */
  spreadPlaces(seconds: Int32Array, places: Int32Array, row: number, open: number): void {
    const { from, to, places: at } = this.edges;
    const isSettled = (stance: number): boolean => (open === 0 ? this.ends.includes(stance) : ((this.meets[stance] ?? 0) & open) !== 0);
    for (let again = true; again;) {
      again = false;
      for (let edge = from.length - 1; edge >= 0;) {
        const stance = from[edge] ?? 0;
        let must = -1;
        for (; edge >= 0 && from[edge] === stance; edge--)
          if ((seconds[row + (to[edge] ?? 0)] ?? NO_WAY) < NO_WAY) must &= (at[edge] ?? 0) | (places[row + (to[edge] ?? 0)] ?? 0);
        if (must === places[row + stance] || isSettled(stance)) continue;
        places[row + stance] = must;
        again = true;
      }
    }
    for (const stance of this.reached) if ((seconds[row + stance] ?? NO_WAY) >= NO_WAY) places[row + stance] = 0;
  }

  #explore(problem: AccessProblem): { readonly reached: Int32Array; readonly edges: Edges } {
    const moves = problem.moves.flatMap((move, index) => (this.parts.includes(move.part) ? [this.#projected(move, index)] : []));
    const barred = this.#barred(problem);
    const seen = new Uint8Array(this.size);
    const reached = new Int32Array(this.size);
    const edges: { readonly [column in keyof Edges]: number[] } = { move: [], from: [], to: [], places: [] };
    let count = 1;
    reached[0] = this.numberOf(problem.start.stance);
    seen[reached[0]] = 1;
    for (let head = 0; head < count; head++) {
      const from = reached[head] ?? 0;
      for (const { at, shift, move, places } of moves) {
        const to = from + shift;
        if (at[from] !== 1 || barred[to] === 1) continue;
        edges.move.push(move);
        edges.from.push(from);
        edges.to.push(to);
        edges.places.push(places);
        if (seen[to] === 1) continue;
        seen[to] = 1;
        reached[count++] = to;
      }
    }
    const packed = (column: readonly number[]): Int32Array => new Int32Array(column);
    return {
      reached: reached.subarray(0, count),
      edges: { move: packed(edges.move), from: packed(edges.from), to: packed(edges.to), places: packed(edges.places) },
    };
  }

  #alike(): PatternSpace['alike'] {
    const groups = new Map<number, number[]>();
    for (const stance of this.reached) addTo(groups, this.meets[stance] ?? 0, stance);
    return [...groups].map(([meets, stances]) => ({ meets, stances: Int32Array.from(stances) }));
  }

  #projected(move: Move, index: number): { at: Uint8Array; shift: number; move: number; places: number } {
    const own = this.parts.indexOf(move.part);
    const stride = this.#sizes.slice(0, own).reduce((size, positions) => size * positions, 1);
    const boxes = move.during.map((box) => this.parts.map((part) => (part === move.part ? 1 << move.from : (box[part] ?? 0))));
    return {
      at: this.#members(boxes),
      shift: (move.to - move.from) * stride,
      move: index,
      places: move.place === null || move.place >= 30 ? 0 : 1 << move.place,
    };
  }

  /** Stances that a never-rule forbids whatever the forgotten parts do. */
  #barred(problem: AccessProblem): Uint8Array {
    const isOfThese = (box: Box): boolean =>
      box.every((mask, part) => this.parts.includes(part) || mask === 2 ** (problem.parts[part] ?? 0) - 1);
    const boxes = problem.nevers.flatMap((set: StanceSet) => set.filter(isOfThese));
    return this.#members(boxes.map((box) => this.parts.map((part) => box[part] ?? 0)));
  }

  /** 1 for each stance in one of the boxes (masks in the order of the parts). */
  #members(boxes: readonly Box[]): Uint8Array {
    const set = new Uint8Array(this.size);
    for (const box of boxes) {
      let stances = [0];
      let stride = 1;
      this.#sizes.forEach((positions, index) => {
        const mask = box[index] ?? 0;
        const [before, step] = [stances, stride];
        stances = [];
        for (let position = 0; position < positions; position++)
          if (((mask >> position) & 1) === 1) for (const stance of before) stances.push(stance + position * step);
        stride *= positions;
      });
      for (const stance of stances) set[stance] = 1;
    }
    return set;
  }

  #brought(set: Uint8Array, members: readonly Uint8Array[]): number {
    let mask = 0;
    members.forEach((other, bit) => {
      if (this.reached.every((stance) => set[stance] !== 1 || other[stance] === 1)) mask |= 1 << bit;
    });
    return mask;
  }
}

interface Edges {
  readonly move: Int32Array;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly places: Int32Array;
}

function goalMask(goal: number | null, size: number): number {
  return goal === null ? 2 ** size - 1 : 1 << goal;
}
