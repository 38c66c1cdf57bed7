/**
 * Stances by number, each worked out once: whether a never-rule forbids it, and where its moves lead.
 *
 * A stance is a bit set with one bit for each position of each part, so that a box is tested with one *and* a word. Stances are
 * numbered from 0 in the order in which they are met.
 */
import { doubled } from './bucket-queue.js';
import type { Move } from './problem.js';
import type { PartSizes, Stance, StanceSet } from './stance-set.js';
import { WordTable } from './word-table.js';

const BITS = 30;

/** Move and stance that it leads to, one after the other. */
export type Exits = Int32Array;

/** For each box of a set, one after the other, the words of bits that a stance in it must not have. */
export type StanceTest = Int32Array;

export class StanceTable {
  readonly #sizes: PartSizes;
  readonly #moves: readonly Move[];
  /** Where the bits of each part begin. */
  readonly #offsets: readonly number[];
  readonly #words: number;
  readonly #stances: WordTable;
  readonly #buffer: Int32Array;
  readonly #during: readonly StanceTest[];
  readonly #nevers: readonly StanceTest[];
  /** Bits of where each move begins and ends. */
  readonly #from: readonly number[];
  readonly #to: readonly number[];
  /** Exits of the stances that were asked for theirs, one after the other. */
  #pool = new Int32Array(256);
  #used = 0;
  /** For each stance where its exits begin and end in the pool; end 0: not worked out. */
  #first = new Int32Array(64);
  #end = new Int32Array(64);

  constructor(sizes: PartSizes, moves: readonly Move[], nevers: readonly StanceSet[]) {
    this.#sizes = sizes;
    this.#moves = moves;
    let bits = 0;
    this.#offsets = sizes.map((size) => (bits += size) - size);
    this.#words = Math.max(1, Math.ceil(bits / BITS));
    this.#stances = new WordTable(this.#words);
    this.#buffer = new Int32Array(this.#words);
    this.#during = moves.map((move) => this.test(move.during));
    this.#nevers = nevers.map((never) => this.test(never));
    this.#from = moves.map((move) => this.#bit(move.part, move.from));
    this.#to = moves.map((move) => this.#bit(move.part, move.to));
  }

  /** How many stances have been met. */
  get size(): number {
    return this.#stances.size;
  }

  /** The number of a stance; it is added if it is new. */
  numberOf(stance: Stance): number {
    this.#buffer.fill(0);
    stance.forEach((position, part) => this.#flip(this.#bit(part, position)));
    return this.#stances.intern(this.#buffer);
  }

  /** The stance that has this number. */
  stance(number: number): Stance {
    return this.#sizes.map((size, part) => {
      for (let position = 0; position < size; position++) if (this.has(number, part, position)) return position;
      return 0;
    });
  }

  has(stance: number, part: number, position: number): boolean {
    return this.#hasBit(stance, this.#bit(part, position));
  }

  /** What {@link passes} asks for: a set, laid out for this table. */
  test(set: StanceSet): StanceTest {
    const forbidden = new Int32Array(this.#words * set.length);
    set.forEach((box, index) =>
      box.forEach((mask, part) => {
        for (let position = 0; position < (this.#sizes[part] ?? 0); position++) {
          const bit = this.#bit(part, position);
          const word = index * this.#words + Math.floor(bit / BITS);
          if (((mask >> position) & 1) === 0) forbidden[word] = (forbidden[word] ?? 0) | (1 << (bit % BITS));
        }
      }),
    );
    return forbidden;
  }

  /** Does the stance lie in the set? */
  passes(stance: number, test: StanceTest): boolean {
    return isInOneOf(this.#stances.data, stance * this.#words, test, this.#words);
  }

  isForbidden(stance: number): boolean {
    for (const test of this.#nevers) if (this.passes(stance, test)) return true;
    return false;
  }

  /** Would the move's own condition let it be made here? Says nothing about where the moving part is. */
  allows(stance: number, move: number): boolean {
    const test = this.#during[move];
    return test !== undefined && this.passes(stance, test);
  }

  /** The stance after a move whose part stands where the move begins, rules apart. */
  after(stance: number, move: number): number {
    this.#layOutAfter(stance, move);
    return this.#stances.intern(this.#buffer);
  }

  /** Does the part that the move is about stand where the move begins? */
  begins(stance: number, move: number): boolean {
    return this.#hasBit(stance, this.#from[move] ?? 0);
  }

  /** Every move that can be made here, in the order in which moves were given, with where it leads. */
  exits(stance: number): Exits {
    if ((this.#end[stance] ?? 0) === 0) this.#findExits(stance);
    return this.#pool.subarray(this.#first[stance], (this.#end[stance] ?? 1) - 1);
  }

  #findExits(stance: number): void {
    while (stance >= this.#end.length) {
      this.#first = doubled(this.#first);
      this.#end = doubled(this.#end);
    }
    this.#first[stance] = this.#used;
    for (let move = 0; move < this.#moves.length; move++) {
      if (!this.begins(stance, move) || !this.allows(stance, move)) continue;
      this.#layOutAfter(stance, move);
      // A forbidden stance gets no number: numbers are of stances that can be reached.
      if (!this.#isBufferForbidden()) this.#addExit(move, this.#stances.intern(this.#buffer));
    }
    // One more than the end, so that a stance without exits is told from one not worked out.
    this.#end[stance] = this.#used + 1;
  }

  #addExit(move: number, target: number): void {
    if (this.#used + 2 > this.#pool.length) this.#pool = doubled(this.#pool);
    this.#pool[this.#used++] = move;
    this.#pool[this.#used++] = target;
  }

  #layOutAfter(stance: number, move: number): void {
    for (let word = 0; word < this.#words; word++) this.#buffer[word] = this.#stances.word(stance, word);
    this.#flip(this.#from[move] ?? 0);
    this.#flip(this.#to[move] ?? 0);
  }

  #isBufferForbidden(): boolean {
    for (const test of this.#nevers) if (isInOneOf(this.#buffer, 0, test, this.#words)) return true;
    return false;
  }

  #bit(part: number, position: number): number {
    return (this.#offsets[part] ?? 0) + position;
  }

  #hasBit(stance: number, bit: number): boolean {
    return ((this.#stances.word(stance, Math.floor(bit / BITS)) >> (bit % BITS)) & 1) === 1;
  }

  #flip(bit: number): void {
    const word = Math.floor(bit / BITS);
    this.#buffer[word] = (this.#buffer[word] ?? 0) ^ (1 << (bit % BITS));
  }
}

function isInOneOf(stances: Int32Array, at: number, test: StanceTest, words: number): boolean {
  for (let box = 0; box < test.length; box += words) {
    let clear = true;
    for (let word = 0; word < words && clear; word++) clear = ((stances[at + word] ?? 0) & (test[box + word] ?? 0)) === 0;
    if (clear) return true;
  }
  return false;
}
