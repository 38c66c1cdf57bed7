/**
 * A lower bound from a few parts looked at alone.
 *
 * A pattern keeps some parts and forgets the others: conditions are read as true wherever the forgotten parts could make them so.
 * What is left is small enough to solve outright: from each stance of these parts, with these demands still open, the least
 * seconds of moving *these parts* until all demands are met and the parts stand where they must end. Patterns that share no part
 * count different moves, so their bounds add up. Order rules and walking are left out of it.
 *
 * The same pass finds the places at which a person must yet stand to move these parts, whichever way they do it.
 *
 * Answers are worked out one set of open demands at a time, when first asked for, from the smaller sets outwards.
 */
import type { EffectiveNeed } from './effective-needs.js';
import type { AccessProblem } from './problem.js';
import type { StanceSet } from './stance-set.js';

/** A cost that stands for "there is no way". Sums of a few of these stay exact and large. */
export const NO_WAY = 1 << 28;

/** More distinct demands than this are not kept apart; the bound stays a bound without them. */
const MOST_DEMANDS = 20;

/** For each stance of the pattern the least seconds still to spend, and the places (bit mask) that must still be stood at. */
export interface PatternRow {
  readonly seconds: Int32Array;
  readonly places: Int32Array;
}

interface Edge {
  readonly from: number;
  readonly to: number;
  readonly seconds: number;
  readonly places: number;
}

export class Pattern {
  readonly parts: readonly number[];
  /** How much each part of the machine counts in a stance number of this pattern; 0 for forgotten ones. */
  readonly strides: readonly number[];
  readonly size: number;
  readonly #into: readonly (readonly Edge[])[];
  readonly #out: readonly (readonly Edge[])[];
  /** For each stance the demands that it meets. */
  readonly #meets: Int32Array;
  /** For each need the bit of its demand, 0 if it asks nothing of these parts. */
  readonly #demandOf: Int32Array;
  /** For each demand the others that meeting it meets too. */
  readonly #brings: readonly number[];
  readonly #isGoal: readonly boolean[];
  readonly #rows = new Map<number, PatternRow>();

  constructor(problem: AccessProblem, needs: readonly EffectiveNeed[], parts: readonly number[]) {
    this.parts = parts;
    const strides = problem.parts.map(() => 0);
    this.size = parts.reduce((size, part) => {
      strides[part] = size;
      return size * (problem.parts[part] ?? 1);
    }, 1);
    this.strides = strides;
    const stances = Array.from({ length: this.size }, (_, stance) => stance);
    const could = (set: StanceSet): readonly boolean[] => stances.map((stance) => this.#could(problem, set, stance));
    const legal = this.#legal(problem, stances);
    const edges = this.#edges(problem, legal, could);
    this.#into = grouped(this.size, edges, (edge) => edge.to);
    this.#out = grouped(this.size, edges, (edge) => edge.from);
    this.#isGoal = stances.map((stance) =>
      parts.every((part) => problem.goal[part] === null || problem.goal[part] === this.#position(problem, stance, part)),
    );
    const demands = distinctDemands(needs.map((need) => could(need.stance)));
    this.#demandOf = Int32Array.from(demands.ofNeed);
    this.#meets = Int32Array.from(stances, (stance) =>
      demands.sets.reduce((mask, set, bit) => (set[stance] === true ? mask | (1 << bit) : mask), 0),
    );
    this.#brings = demands.sets.map((set, bit) =>
      demands.sets.reduce(
        (mask, other, index) => (index !== bit && set.every((met, stance) => !met || other[stance] === true) ? mask | (1 << index) : mask),
        0,
      ),
    );
  }

  /** How many distinct demands the needs make of these parts. */
  get demands(): number {
    return this.#brings.length;
  }

  /** The open demands, of needs that are not done, without those that another open one brings along. */
  openDemands(isDone: (need: number) => boolean): number {
    let open = 0;
    this.#demandOf.forEach((bit, need) => {
      if (bit !== 0 && !isDone(need)) open |= bit;
    });
    let needed = open;
    this.#brings.forEach((others, bit) => {
      if ((open & (1 << bit)) !== 0) needed &= ~others;
    });
    return needed;
  }

  row(open: number): PatternRow {
    const known = this.#rows.get(open);
    if (known !== undefined) return known;
    const row = this.#work(open);
    this.#rows.set(open, row);
    return row;
  }

  #work(open: number): PatternRow {
    const seconds = new Int32Array(this.size).fill(NO_WAY);
    const places = new Int32Array(this.size).fill(-1);
    const settled = new Uint8Array(this.size);
    for (let stance = 0; stance < this.size; stance++) {
      const met = (this.#meets[stance] ?? 0) & open;
      if (met === 0 && (open !== 0 || this.#isGoal[stance] !== true)) continue;
      settled[stance] = 1;
      const rest = met === 0 ? null : this.row(open & ~met);
      seconds[stance] = rest?.seconds[stance] ?? 0;
      places[stance] = rest?.places[stance] ?? 0;
    }
    this.#spreadSeconds(seconds, settled);
    this.#spreadPlaces(seconds, places, settled);
    return { seconds, places };
  }

  #spreadSeconds(seconds: Int32Array, settled: Uint8Array): void {
    const queue = [...seconds.keys()].filter((stance) => settled[stance] === 1 && (seconds[stance] ?? NO_WAY) < NO_WAY);
    for (let head = 0; head < queue.length; head++) {
      const stance = queue[head] ?? 0;
      for (const edge of this.#into[stance] ?? []) {
        const through = (seconds[stance] ?? NO_WAY) + edge.seconds;
        if (settled[edge.from] === 1 || through >= (seconds[edge.from] ?? NO_WAY)) continue;
        seconds[edge.from] = through;
        queue.push(edge.from);
      }
    }
  }

  /** Greatest fixpoint: a place must be visited if every way on either goes there at once or must visit it later. */
  #spreadPlaces(seconds: Int32Array, places: Int32Array, settled: Uint8Array): void {
    const queue = [...settled.keys()].filter((stance) => settled[stance] === 1);
    for (let head = 0; head < queue.length; head++) {
      for (const back of this.#into[queue[head] ?? 0] ?? []) {
        if (settled[back.from] === 1) continue;
        let must = -1;
        for (const edge of this.#out[back.from] ?? [])
          if ((seconds[edge.to] ?? NO_WAY) < NO_WAY) must &= edge.places | (places[edge.to] ?? 0);
        if (must === places[back.from]) continue;
        places[back.from] = must;
        queue.push(back.from);
      }
    }
    for (let stance = 0; stance < this.size; stance++) if ((seconds[stance] ?? NO_WAY) >= NO_WAY) places[stance] = 0;
  }

  #legal(problem: AccessProblem, stances: readonly number[]): readonly boolean[] {
    const apart = problem.nevers.map((set) => set.filter((box) => this.#asksOnlyOfThese(problem, box)));
    const start = this.numberOf(problem.start.stance);
    return stances.map((stance) => stance === start || apart.every((set) => !this.#could(problem, set, stance)));
  }

  #asksOnlyOfThese(problem: AccessProblem, box: readonly number[]): boolean {
    return box.every((mask, part) => this.parts.includes(part) || mask === 2 ** (problem.parts[part] ?? 0) - 1);
  }

  #edges(problem: AccessProblem, legal: readonly boolean[], could: (set: StanceSet) => readonly boolean[]): readonly Edge[] {
    return problem.moves.flatMap((move) => {
      const stride = this.strides[move.part] ?? 0;
      if (stride === 0) return [];
      const allowed = could(move.during);
      const places = move.place === null || move.place > 29 ? 0 : 1 << move.place;
      return allowed.flatMap((yes, from) => {
        const to = from + (move.to - move.from) * stride;
        if (!yes || this.#position(problem, from, move.part) !== move.from || legal[from] !== true || legal[to] !== true) return [];
        return [{ from, to, seconds: move.seconds, places }];
      });
    });
  }

  /** The number that the machine's stance has in this pattern. */
  numberOf(stance: readonly number[]): number {
    return this.parts.reduce((sum, part) => sum + (stance[part] ?? 0) * (this.strides[part] ?? 0), 0);
  }

  #position(problem: AccessProblem, stance: number, part: number): number {
    return Math.floor(stance / (this.strides[part] ?? 1)) % (problem.parts[part] ?? 1);
  }

  #could(problem: AccessProblem, set: StanceSet, stance: number): boolean {
    return set.some((box) => this.parts.every((part) => (((box[part] ?? 0) >> this.#position(problem, stance, part)) & 1) === 1));
  }
}

function grouped(size: number, edges: readonly Edge[], key: (edge: Edge) => number): readonly (readonly Edge[])[] {
  const groups: Edge[][] = Array.from({ length: size }, () => []);
  for (const edge of edges) groups[key(edge)]?.push(edge);
  return groups;
}

interface Demands {
  readonly sets: readonly (readonly boolean[])[];
  readonly ofNeed: readonly number[];
}

function distinctDemands(asked: readonly (readonly boolean[])[]): Demands {
  const sets: (readonly boolean[])[] = [];
  const known = new Map<string, number>();
  const ofNeed = asked.map((set) => {
    if (set.every((met) => met)) return 0;
    const key = set.map((met) => (met ? '1' : '0')).join('');
    const seen = known.get(key);
    if (seen !== undefined) return seen;
    if (sets.length >= MOST_DEMANDS) return 0;
    const bit = 1 << sets.length;
    sets.push(set);
    known.set(key, bit);
    return bit;
  });
  return { sets, ofNeed };
}
