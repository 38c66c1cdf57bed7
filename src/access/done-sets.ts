/**
 * Which needs are done, numbered, and what each such set leaves open: for every pattern the open demands, and the places that the
 * open needs lie at.
 */
import type { EffectiveNeed } from './effective-needs.js';
import type { Pattern } from './pattern.js';
import { WordTable } from './word-table.js';

const BITS = 30;

/** What a set of done needs means to the search. */
export interface DoneFacts {
  readonly isComplete: boolean;
  /** For each pattern the row of what is still open. */
  readonly rows: Int32Array;
  /** Places (bit mask, the first 30) of needs that are still open. */
  readonly places: number;
}

export class DoneSets {
  readonly #needs: readonly EffectiveNeed[];
  readonly #patterns: readonly Pattern[];
  readonly #words: number;
  readonly #table: WordTable;
  readonly #buffer: Int32Array;
  readonly #facts: (DoneFacts | undefined)[] = [];
  /** For each place, the needs that can be met while standing there: those of the place, and those of none. The last is for "no place". */
  readonly #meetable: readonly Int32Array[];
  /** Words of what must be done before each need; `null` where that is nothing. */
  readonly #before: readonly (Int32Array | null)[];
  readonly #ordered: boolean;

  constructor(needs: readonly EffectiveNeed[], patterns: readonly Pattern[], places: number) {
    this.#needs = needs;
    this.#patterns = patterns;
    this.#words = Math.max(1, Math.ceil(needs.length / BITS));
    this.#table = new WordTable(this.#words);
    this.#buffer = new Int32Array(this.#words);
    const words = (keep: (need: EffectiveNeed, index: number) => boolean): Int32Array => wordsOf(needs, keep, this.#words);
    this.#meetable = Array.from({ length: places + 1 }, (_, place) => words((need) => need.place === null || need.place === place));
    this.#before = needs.map((need) => (need.after.length === 0 ? null : words((_, index) => need.after.includes(index))));
    this.#ordered = this.#before.some((words) => words !== null);
  }

  /** The number of the empty set. */
  none(): number {
    return this.#table.intern(new Int32Array(this.#words));
  }

  /** Does `larger` hold everything that `smaller` does? */
  isWithin(smaller: number, larger: number): boolean {
    for (let word = 0; word < this.#words; word++)
      if ((this.#table.word(smaller, word) & ~this.#table.word(larger, word)) !== 0) return false;
    return true;
  }

  facts(done: number): DoneFacts {
    return (this.#facts[done] ??= this.#work(done));
  }

  /**
   * The set after doing everything that can be done at `place` (`-1`: anywhere) in a stance that meets what the words of
   * `met` from `at` on say, order rules kept.
   * Doing it at once never costs more than doing it later: it changes neither stance nor place, and only opens the way for others.
   */
  absorb(done: number, met: Int32Array, at: number, place: number): number {
    const meetable = this.#meetable[place < 0 ? this.#meetable.length - 1 : place];
    let changed = false;
    for (let word = 0; word < this.#words; word++) {
      const before = this.#table.word(done, word);
      const after = before | ((met[at + word] ?? 0) & (meetable?.[word] ?? 0));
      this.#buffer[word] = after;
      changed ||= after !== before;
    }
    if (!changed) return done;
    if (this.#ordered) this.#keepOrder(done);
    return this.#table.intern(this.#buffer);
  }

  /** Takes out of the buffer, again and again, what is not yet in turn. */
  #keepOrder(done: number): void {
    const wanted = this.#buffer.slice();
    for (let word = 0; word < this.#words; word++) this.#buffer[word] = this.#table.word(done, word);
    for (let again = true; again;) {
      again = false;
      this.#before.forEach((before, need) => {
        const word = Math.floor(need / BITS);
        const bit = 1 << (need % BITS);
        if (((wanted[word] ?? 0) & bit) === 0 || ((this.#buffer[word] ?? 0) & bit) !== 0) return;
        if (before !== null && !before.every((bits, index) => (bits & ~(this.#buffer[index] ?? 0)) === 0)) return;
        this.#buffer[word] = (this.#buffer[word] ?? 0) | bit;
        again = true;
      });
    }
  }

  #isDone(done: number, need: number): boolean {
    return ((this.#table.word(done, Math.floor(need / BITS)) >> (need % BITS)) & 1) === 1;
  }

  #work(done: number): DoneFacts {
    const isDone = (need: number): boolean => this.#isDone(done, need);
    let places = 0;
    this.#needs.forEach((need, index) => {
      if (need.place !== null && need.place < BITS && !isDone(index)) places |= 1 << need.place;
    });
    return {
      isComplete: this.#needs.every((_, index) => isDone(index)),
      rows: Int32Array.from(this.#patterns, (pattern) => pattern.row(pattern.space.openDemands(isDone))),
      places,
    };
  }
}

function wordsOf(needs: readonly EffectiveNeed[], keep: (need: EffectiveNeed, index: number) => boolean, words: number): Int32Array {
  const bits = new Int32Array(words);
  needs.forEach((need, index) => {
    const word = Math.floor(index / BITS);
    if (keep(need, index)) bits[word] = (bits[word] ?? 0) | (1 << (index % BITS));
  });
  return bits;
}
