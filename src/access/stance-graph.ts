/**
 * The stances of a problem, as far as a search has come, each worked out once: which needs it meets, where its moves lead, and
 * how each pattern numbers it.
 */
import { doubled } from './bucket-queue.js';
import type { EffectiveNeed } from './effective-needs.js';
import { itemAt } from './item-at.js';
import type { Pattern } from './pattern.js';
import type { AccessProblem } from './problem.js';
import type { Stance } from './stance-set.js';
import type { Exits, StanceTest } from './stance-table.js';
import { StanceTable } from './stance-table.js';

const BITS = 30;

export class StanceGraph {
  readonly #problem: AccessProblem;
  /** For each pattern how much a position of each part counts in its stance numbers; 0 for parts that it forgets. */
  readonly #strides: readonly (readonly number[])[];
  readonly #table: StanceTable;
  readonly #needs: readonly StanceTest[];
  readonly #words: number;
  /** For each stance, 1 once it is known which needs it meets. */
  #isMetKnown = new Uint8Array(64);
  #met: Int32Array;
  /** For each stance its number in each pattern; how many stances have theirs is `#numbered`. */
  #numbers: Int32Array;
  #numbered = 0;

  constructor(problem: AccessProblem, needs: readonly EffectiveNeed[], patterns: readonly Pattern[]) {
    this.#problem = problem;
    this.#strides = patterns.map((pattern) => stridesOf(problem, pattern));
    this.#table = new StanceTable(problem.parts, problem.moves, problem.nevers);
    this.#needs = needs.map((need) => this.#table.test(need.stance));
    this.#words = Math.max(1, Math.ceil(needs.length / BITS));
    this.#met = new Int32Array(64 * this.#words);
    this.#numbers = new Int32Array(64 * Math.max(1, patterns.length));
  }

  /** How many stances have been met. */
  get size(): number {
    return this.#table.size;
  }

  /** The number of a stance; stances are numbered from 0 in the order in which they are met. */
  numberOf(stance: Stance): number {
    const number = this.#table.numberOf(stance);
    if (number === this.#numbered) {
      const at = this.#room();
      this.#strides.forEach((strides, index) => {
        this.#numbers[at + index] = stance.reduce((sum, position, part) => sum + position * (strides[part] ?? 0), 0);
      });
    }
    return number;
  }

  /** How a pattern numbers this stance. */
  patternNumber(stance: number, pattern: number): number {
    return this.#numbers[stance * this.#strides.length + pattern] ?? 0;
  }

  has(stance: number, part: number, position: number): boolean {
    return this.#table.has(stance, part, position);
  }

  /**
   * The needs that this stance meets, place and order apart; none where a never-rule is broken. So many words of 30 bits, from the place
   * in {@link metWords} that is answered.
   */
  met(stance: number): number {
    while (stance >= this.#isMetKnown.length) {
      const known = new Uint8Array(this.#isMetKnown.length * 2);
      known.set(this.#isMetKnown);
      this.#isMetKnown = known;
      this.#met = doubled(this.#met);
    }
    if (this.#isMetKnown[stance] === 0) this.#findMet(stance);
    return stance * this.#words;
  }

  get metWords(): Int32Array {
    return this.#met;
  }

  /** Every move that can be made here, in the order of the problem, with where it leads. */
  exits(stance: number): Exits {
    const exits = this.#table.exits(stance);
    for (let index = 0; index < exits.length; index += 2) this.#number(stance, exits[index] ?? 0, exits[index + 1] ?? 0);
    return exits;
  }

  #findMet(stance: number): void {
    this.#isMetKnown[stance] = 1;
    if (this.#table.isForbidden(stance)) return;
    this.#needs.forEach((test, need) => {
      const word = stance * this.#words + Math.floor(need / BITS);
      if (this.#table.passes(stance, test)) this.#met[word] = (this.#met[word] ?? 0) | (1 << (need % BITS));
    });
  }

  #number(from: number, move: number, to: number): void {
    if (to !== this.#numbered) return;
    const at = this.#room();
    const { part, from: before, to: after } = itemAt(this.#problem.moves, move);
    this.#strides.forEach((strides, index) => {
      this.#numbers[at + index] = this.patternNumber(from, index) + (after - before) * (strides[part] ?? 0);
    });
  }

  /** Where the numbers of the next stance go. */
  #room(): number {
    const at = this.#numbered++ * this.#strides.length;
    if (at + this.#strides.length > this.#numbers.length) this.#numbers = doubled(this.#numbers);
    return at;
  }
}

function stridesOf(problem: AccessProblem, pattern: Pattern): readonly number[] {
  const strides = problem.parts.map(() => 0);
  pattern.space.parts.reduce((stride, part) => {
    strides[part] = stride;
    return stride * (problem.parts[part] ?? 1);
  }, 1);
  return strides;
}
