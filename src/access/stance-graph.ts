/**
 * The stances of a problem, as far as a search has come, each worked out once: which needs it meets, where its moves lead, and
 * how each pattern numbers it.
 */
import type { EffectiveNeed } from './effective-needs.js';
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
  readonly #met: (Int32Array | undefined)[] = [];
  readonly #numbers: Int32Array[] = [];

  constructor(problem: AccessProblem, needs: readonly EffectiveNeed[], patterns: readonly Pattern[]) {
    this.#problem = problem;
    this.#strides = patterns.map((pattern) => stridesOf(problem, pattern));
    this.#table = new StanceTable(problem.parts, problem.moves, problem.nevers);
    this.#needs = needs.map((need) => this.#table.test(need.stance));
  }

  /** The number of a stance; stances are numbered from 0 in the order in which they are met. */
  numberOf(stance: Stance): number {
    const number = this.#table.numberOf(stance);
    this.#numbers[number] ??= Int32Array.from(this.#strides, (strides) =>
      stance.reduce((sum, position, part) => sum + position * (strides[part] ?? 0), 0),
    );
    return number;
  }

  /** How each pattern numbers this stance. */
  patternNumbers(stance: number): Int32Array {
    return this.#numbers[stance] ?? new Int32Array(0);
  }

  has(stance: number, part: number, position: number): boolean {
    return this.#table.has(stance, part, position);
  }

  /** The needs that this stance meets, as words of 30 bits, place and order apart; none where a never-rule is broken. */
  met(stance: number): Int32Array {
    return (this.#met[stance] ??= this.#findMet(stance));
  }

  /** Every move that can be made here, in the order of the problem, with where it leads. */
  exits(stance: number): Exits {
    const exits = this.#table.exits(stance);
    for (let index = 0; index < exits.length; index += 2) this.#number(stance, exits[index] ?? 0, exits[index + 1] ?? 0);
    return exits;
  }

  #findMet(stance: number): Int32Array {
    const met = new Int32Array(Math.max(1, Math.ceil(this.#needs.length / BITS)));
    if (this.#table.isForbidden(stance)) return met;
    this.#needs.forEach((test, need) => {
      const word = Math.floor(need / BITS);
      if (this.#table.passes(stance, test)) met[word] = (met[word] ?? 0) | (1 << (need % BITS));
    });
    return met;
  }

  #number(from: number, move: number, to: number): void {
    const { part, from: before, to: after } = this.#problem.moves[move] ?? { part: -1, from: 0, to: 0 };
    this.#numbers[to] ??= this.patternNumbers(from).map((number, index) => number + (after - before) * (this.#strides[index]?.[part] ?? 0));
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
