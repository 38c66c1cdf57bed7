/**
 * The stances of a few parts taken alone, numbered, with the moves between them.
 *
 * Only stances that can be reached from where the parts stand are considered; a condition on a forgotten part is read as met.
 */
import { NO_WAY } from './no-way.js';
import type { AccessProblem, Move } from './problem.js';
import type { Box, StanceSet } from './stance-set.js';

export class PatternSpace {
  /** Stances that can be reached, in the order in which that was found. */
  readonly reached: readonly number[];
  /** For each stance the demands that it meets. */
  readonly meets: Int32Array;
  /** For each demand the others that are met wherever it is. */
  readonly brings: readonly number[];
  /** 1 for stances in which these parts may end. */
  readonly isGoal: Uint8Array;
  /** Do these moves have places at all? */
  readonly tellsPlaces: boolean;
  readonly #parts: readonly number[];
  readonly #sizes: readonly number[];
  readonly #size: number;
  readonly #into: Links;
  readonly #out: Links;

  constructor(problem: AccessProblem, parts: readonly number[], demands: readonly (readonly Box[])[]) {
    this.#parts = parts;
    this.#sizes = parts.map((part) => problem.parts[part] ?? 1);
    this.#size = this.#sizes.reduce((size, positions) => size * positions, 1);
    const { reached, edges } = this.#explore(problem);
    this.reached = reached;
    this.tellsPlaces = edges.some((edge) => edge.places !== 0);
    this.#into = linksOf(
      this.#size,
      edges,
      (edge) => edge.to,
      (edge) => edge.from,
    );
    this.#out = linksOf(
      this.#size,
      edges,
      (edge) => edge.from,
      (edge) => edge.to,
    );
    const members = demands.map((boxes) => this.#members(boxes));
    this.meets = new Int32Array(this.#size);
    members.forEach((set, bit) => set.forEach((met, stance) => (this.meets[stance] = (this.meets[stance] ?? 0) | (met << bit))));
    this.brings = members.map((set, bit) => this.#brought(set, members) & ~(1 << bit));
    this.isGoal = this.#members([parts.map((part, index) => goalMask(problem.goal[part] ?? null, this.#sizes[index] ?? 1))]);
  }

  /** Lowers `seconds` to the least that leads from each stance to a settled one, by Dijkstra's rule in the cheap form for few stances. */
  spreadSeconds(seconds: Int32Array, settled: readonly number[]): void {
    const { first, other, cost } = this.#into;
    const isQueued = new Uint8Array(this.#size);
    const isSettled = new Uint8Array(this.#size);
    for (const stance of settled) isSettled[stance] = 1;
    const queue = settled.filter((stance) => (seconds[stance] ?? NO_WAY) < NO_WAY).sort((a, b) => (seconds[a] ?? 0) - (seconds[b] ?? 0));
    for (let head = 0; head < queue.length; head++) {
      const stance = queue[head] ?? 0;
      isQueued[stance] = 0;
      const here = seconds[stance] ?? NO_WAY;
      for (let link = first[stance] ?? 0; link < (first[stance + 1] ?? 0); link++) {
        const from = other[link] ?? 0;
        const through = here + (cost[link] ?? 0);
        if (isSettled[from] === 1 || through >= (seconds[from] ?? NO_WAY)) continue;
        seconds[from] = through;
        if (isQueued[from] === 0) queue.push(from);
        isQueued[from] = 1;
      }
    }
  }

  /** A place must still be visited if every way on either goes there at once or must visit it later: the greatest fixpoint of that. */
  spreadPlaces(seconds: Int32Array, places: Int32Array, settled: readonly number[]): void {
    const isSettled = new Uint8Array(this.#size);
    for (const stance of settled) isSettled[stance] = 1;
    const queue = [...settled];
    for (let head = 0; head < queue.length; head++) {
      const stance = queue[head] ?? 0;
      for (let link = this.#into.first[stance] ?? 0; link < (this.#into.first[stance + 1] ?? 0); link++) {
        const from = this.#into.other[link] ?? 0;
        if (isSettled[from] === 1) continue;
        const must = this.#mustVisit(from, seconds, places);
        if (must === places[from]) continue;
        places[from] = must;
        queue.push(from);
      }
    }
    for (const stance of this.reached) if ((seconds[stance] ?? NO_WAY) >= NO_WAY) places[stance] = 0;
  }

  #mustVisit(stance: number, seconds: Int32Array, places: Int32Array): number {
    let must = -1;
    for (let link = this.#out.first[stance] ?? 0; link < (this.#out.first[stance + 1] ?? 0); link++) {
      const to = this.#out.other[link] ?? 0;
      if ((seconds[to] ?? NO_WAY) < NO_WAY) must &= (this.#out.places[link] ?? 0) | (places[to] ?? 0);
    }
    return must;
  }

  #explore(problem: AccessProblem): { readonly reached: readonly number[]; readonly edges: readonly Edge[] } {
    const moves = problem.moves.filter((move) => this.#parts.includes(move.part)).map((move) => this.#projected(move));
    const barred = this.#barred(problem);
    const start = this.#parts.reduceRight((sum, part, index) => sum * (this.#sizes[index] ?? 1) + (problem.start.stance[part] ?? 0), 0);
    const seen = new Uint8Array(this.#size);
    const reached = [start];
    const edges: Edge[] = [];
    seen[start] = 1;
    for (let head = 0; head < reached.length; head++) {
      const from = reached[head] ?? 0;
      for (const move of moves) {
        const to = from + move.shift;
        if (move.at[from] !== 1 || barred[to] === 1) continue;
        edges.push({ from, to, seconds: move.seconds, places: move.places });
        if (seen[to] !== 1) reached.push(to);
        seen[to] = 1;
      }
    }
    return { reached, edges };
  }

  #projected(move: Move): { at: Uint8Array; shift: number; seconds: number; places: number } {
    const index = this.#parts.indexOf(move.part);
    const stride = this.#sizes.slice(0, index).reduce((size, positions) => size * positions, 1);
    const boxes = move.during.map((box) => this.#parts.map((part) => (part === move.part ? 1 << move.from : (box[part] ?? 0))));
    return {
      at: this.#members(boxes),
      shift: (move.to - move.from) * stride,
      seconds: move.seconds,
      places: move.place === null || move.place >= 30 ? 0 : 1 << move.place,
    };
  }

  /** Stances that a never-rule forbids whatever the forgotten parts do. */
  #barred(problem: AccessProblem): Uint8Array {
    const isOfThese = (box: Box): boolean =>
      box.every((mask, part) => this.#parts.includes(part) || mask === 2 ** (problem.parts[part] ?? 0) - 1);
    const boxes = problem.nevers.flatMap((set: StanceSet) => set.filter(isOfThese));
    return this.#members(boxes.map((box) => this.#parts.map((part) => box[part] ?? 0)));
  }

  /** 1 for each stance in one of the boxes (masks in the order of the parts). */
  #members(boxes: readonly Box[]): Uint8Array {
    const set = new Uint8Array(this.#size);
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

interface Edge {
  readonly from: number;
  readonly to: number;
  readonly seconds: number;
  readonly places: number;
}

/** Edges sorted by one end: those of stance *s* are at `first[s]` up to `first[s + 1]`. */
interface Links {
  readonly first: Int32Array;
  readonly other: Int32Array;
  readonly cost: Int32Array;
  readonly places: Int32Array;
}

function linksOf(size: number, edges: readonly Edge[], key: (edge: Edge) => number, end: (edge: Edge) => number): Links {
  const first = new Int32Array(size + 1);
  for (const edge of edges) first[key(edge) + 1] = (first[key(edge) + 1] ?? 0) + 1;
  for (let stance = 0; stance < size; stance++) first[stance + 1] = (first[stance + 1] ?? 0) + (first[stance] ?? 0);
  const next = first.slice();
  const links = { first, other: new Int32Array(edges.length), cost: new Int32Array(edges.length), places: new Int32Array(edges.length) };
  for (const edge of edges) {
    const link = next[key(edge)] ?? 0;
    next[key(edge)] = link + 1;
    links.other[link] = end(edge);
    links.cost[link] = edge.seconds;
    links.places[link] = edge.places;
  }
  return links;
}

function goalMask(goal: number | null, size: number): number {
  return goal === null ? 2 ** size - 1 : 1 << goal;
}
