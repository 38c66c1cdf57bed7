/**
 * A lower bound on the walking that is left: the shortest way that starts here and calls at every place of a set.
 *
 * Exact up to twelve places (by the recurrence of Held and Karp, 1962), beyond that the weight of a least spanning tree.
 */
export class WalkBound {
  readonly #walk: readonly (readonly number[])[];
  readonly #known = new Map<number, number>();

  constructor(walk: readonly (readonly number[])[]) {
    this.#walk = walk;
  }

  /** @param here index of a place, or −1 for "anywhere"; @param places bit mask of places still to be stood at (first 30 places only) */
  seconds(here: number, places: number): number {
    const rest = here < 0 ? places : places & ~(1 << here);
    if (rest === 0) return 0;
    const key = rest * 32 + here + 1;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const found = bitCount(rest) <= 12 ? this.#shortest(here, rest) : this.#tree(here, rest);
    this.#known.set(key, found);
    return found;
  }

  #shortest(here: number, rest: number): number {
    let best = Infinity;
    for (let left = rest; left !== 0; left &= left - 1) {
      const next = 31 - Math.clz32(left & -left);
      best = Math.min(best, this.#between(here, next) + this.seconds(next, rest & ~(1 << next)));
    }
    return best;
  }

  #tree(here: number, rest: number): number {
    const away = placesIn(rest);
    let inside = here < 0 ? [away.pop() ?? 0] : [here];
    let total = 0;
    while (away.length > 0) {
      const costs = away.map((place) => Math.min(...inside.map((other) => this.#between(other, place))));
      const nearest = costs.indexOf(Math.min(...costs));
      total += costs[nearest] ?? 0;
      inside = [...inside, ...away.splice(nearest, 1)];
    }
    return total;
  }

  #between(from: number, to: number): number {
    return from < 0 ? 0 : (this.#walk[from]?.[to] ?? Infinity);
  }
}

function placesIn(mask: number): number[] {
  return Array.from({ length: 30 }, (_, place) => place).filter((place) => ((mask >> place) & 1) === 1);
}

function bitCount(mask: number): number {
  let count = 0;
  for (let left = mask; left !== 0; left &= left - 1) count++;
  return count;
}
