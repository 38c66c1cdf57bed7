/**
 * The stances of a problem, as far as a search has come, each worked out once: which needs it meets, where its moves lead, and
 * how each pattern numbers it.
 *
 * A stance is a bit set with one bit for each position of each part, so that a box is tested with one *and* a word.
 */
import type { EffectiveNeed } from './effective-needs.js';
import type { Pattern } from './pattern.js';
import type { AccessProblem } from './problem.js';
import type { Stance, StanceSet } from './stance-set.js';
import { WordTable } from './word-table.js';

const BITS = 30;

/** Move and stance that it leads to, one after the other. */
export type Exits = Int32Array;

export class StanceGraph {
  readonly #problem: AccessProblem;
  /** For each pattern how much a position of each part counts in its stance numbers; 0 for parts that it forgets. */
  readonly #strides: readonly (readonly number[])[];
  readonly #offsets: readonly number[];
  readonly #stances: WordTable;
  readonly #buffer: Int32Array;
  readonly #during: readonly Test[];
  readonly #needs: readonly Test[];
  readonly #nevers: readonly Test[];
  readonly #exits: (Exits | undefined)[] = [];
  readonly #met: (Int32Array | undefined)[] = [];
  readonly #numbers: Int32Array[] = [];

  constructor(problem: AccessProblem, needs: readonly EffectiveNeed[], patterns: readonly Pattern[]) {
    this.#problem = problem;
    this.#strides = patterns.map((pattern) => stridesOf(problem, pattern));
    let bits = 0;
    this.#offsets = problem.parts.map((size) => (bits += size) - size);
    const words = Math.max(1, Math.ceil(bits / BITS));
    this.#stances = new WordTable(words);
    this.#buffer = new Int32Array(words);
    const test = (set: StanceSet): Test => testFor(set, problem.parts, this.#offsets, words);
    this.#during = problem.moves.map((move) => test(move.during));
    this.#needs = needs.map((need) => test(need.stance));
    this.#nevers = problem.nevers.map(test);
  }

  /** The number of a stance; stances are numbered from 0 in the order in which they are met. */
  numberOf(stance: Stance): number {
    this.#buffer.fill(0);
    stance.forEach((position, part) => {
      const bit = (this.#offsets[part] ?? 0) + position;
      this.#buffer[Math.floor(bit / BITS)] = (this.#buffer[Math.floor(bit / BITS)] ?? 0) | (1 << (bit % BITS));
    });
    const id = this.#stances.intern(this.#buffer);
    this.#numbers[id] ??= Int32Array.from(this.#strides, (strides) =>
      stance.reduce((sum, position, part) => sum + position * (strides[part] ?? 0), 0),
    );
    return id;
  }

  /** How each pattern numbers this stance. */
  patternNumbers(stance: number): Int32Array {
    return this.#numbers[stance] ?? new Int32Array(0);
  }

  has(stance: number, part: number, position: number): boolean {
    const bit = (this.#offsets[part] ?? 0) + position;
    return ((this.#stances.word(stance, Math.floor(bit / BITS)) >> (bit % BITS)) & 1) === 1;
  }

  isForbidden(stance: number): boolean {
    return this.#nevers.some((test) => this.#passes(stance, test));
  }

  /** The needs that this stance meets, as words of 30 bits, place and order apart; none where a never-rule is broken. */
  met(stance: number): Int32Array {
    return (this.#met[stance] ??= this.#findMet(stance));
  }

  /** Every move that can be made here, in the order of the problem, with where it leads. */
  exits(stance: number): Exits {
    return (this.#exits[stance] ??= this.#findExits(stance));
  }

  #findMet(stance: number): Int32Array {
    const met = new Int32Array(Math.max(1, Math.ceil(this.#needs.length / BITS)));
    if (this.isForbidden(stance)) return met;
    this.#needs.forEach((test, need) => {
      const word = Math.floor(need / BITS);
      if (this.#passes(stance, test)) met[word] = (met[word] ?? 0) | (1 << (need % BITS));
    });
    return met;
  }

  #findExits(stance: number): Exits {
    const exits: number[] = [];
    this.#problem.moves.forEach((move, index) => {
      const test = this.#during[index];
      if (test === undefined || !this.has(stance, move.part, move.from) || !this.#passes(stance, test)) return;
      const target = this.#moved(stance, move.part, move.from, move.to);
      if (!this.isForbidden(target)) exits.push(index, target);
    });
    return Int32Array.from(exits);
  }

  #moved(stance: number, part: number, from: number, to: number): number {
    for (let word = 0; word < this.#buffer.length; word++) this.#buffer[word] = this.#stances.word(stance, word);
    const offset = this.#offsets[part] ?? 0;
    this.#flip(offset + from);
    this.#flip(offset + to);
    const id = this.#stances.intern(this.#buffer);
    this.#numbers[id] ??= this.patternNumbers(stance).map((number, index) => number + (to - from) * (this.#strides[index]?.[part] ?? 0));
    return id;
  }

  #flip(bit: number): void {
    const word = Math.floor(bit / BITS);
    this.#buffer[word] = (this.#buffer[word] ?? 0) ^ (1 << (bit % BITS));
  }

  #passes(stance: number, test: Test): boolean {
    for (const forbidden of test) {
      let clear = true;
      for (let word = 0; word < forbidden.length && clear; word++)
        clear = (this.#stances.word(stance, word) & (forbidden[word] ?? 0)) === 0;
      if (clear) return true;
    }
    return false;
  }
}

function stridesOf(problem: AccessProblem, pattern: Pattern): readonly number[] {
  const strides = problem.parts.map(() => 0);
  pattern.parts.reduce((stride, part) => {
    strides[part] = stride;
    return stride * (problem.parts[part] ?? 1);
  }, 1);
  return strides;
}

/** For each box the bits that a stance in it must not have. */
type Test = readonly Int32Array[];

function testFor(set: StanceSet, sizes: readonly number[], offsets: readonly number[], words: number): Test {
  return set.map((box) => {
    const forbidden = new Int32Array(words);
    box.forEach((mask, part) => {
      for (let position = 0; position < (sizes[part] ?? 0); position++) {
        const bit = (offsets[part] ?? 0) + position;
        const word = Math.floor(bit / BITS);
        if (((mask >> position) & 1) === 0) forbidden[word] = (forbidden[word] ?? 0) | (1 << (bit % BITS));
      }
    });
    return forbidden;
  });
}
