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
import { NO_WAY } from './no-way.js';
import { distinctDemands } from './pattern-demands.js';
import { PatternSpace } from './pattern-space.js';
import type { AccessProblem } from './problem.js';

/** For each stance of the pattern the least seconds still to spend, and the places (bit mask) that must still be stood at. */
export interface PatternRow {
  readonly seconds: Int32Array;
  readonly places: Int32Array;
}

export class Pattern {
  readonly parts: readonly number[];
  readonly size: number;
  /** How many distinct demands the needs make of these parts. */
  readonly demands: number;
  readonly #problem: AccessProblem;
  /** For each need the bit of its demand, 0 if it asks nothing of these parts. */
  readonly #demandOf: Int32Array;
  readonly #sets: ReturnType<typeof distinctDemands>['sets'];
  #space: PatternSpace | null = null;
  readonly #rows = new Map<number, PatternRow>();

  constructor(problem: AccessProblem, needs: readonly EffectiveNeed[], parts: readonly number[]) {
    this.parts = parts;
    this.size = parts.reduce((size, part) => size * (problem.parts[part] ?? 1), 1);
    this.#problem = problem;
    const demands = distinctDemands(problem, needs, parts);
    this.#demandOf = Int32Array.from(demands.ofNeed);
    this.#sets = demands.sets;
    this.demands = demands.sets.length;
  }

  /** The stances of these parts, laid out when first needed: choosing between patterns does without. */
  get space(): PatternSpace {
    return (this.#space ??= new PatternSpace(this.#problem, this.parts, this.#sets));
  }

  /** The open demands, of needs that are not done, without those that another open one brings along. */
  openDemands(isDone: (need: number) => boolean): number {
    let open = 0;
    this.#demandOf.forEach((bit, need) => {
      if (bit !== 0 && !isDone(need)) open |= bit;
    });
    let needed = open;
    this.space.brings.forEach((others, bit) => {
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

  /**
   * A stance that meets open demands takes its values from the row without them: meeting them there and then is free and never
   * hurts. From those stances, and from the goal when nothing is open, values spread backwards along the moves.
   */
  #work(open: number): PatternRow {
    const space = this.space;
    const seconds = new Int32Array(this.size).fill(NO_WAY);
    const places = new Int32Array(this.size);
    const settled: number[] = [];
    for (const stance of space.reached) {
      const met = (space.meets[stance] ?? 0) & open;
      if (met === 0 && (open !== 0 || space.isGoal[stance] !== 1)) {
        places[stance] = space.tellsPlaces ? -1 : 0;
        continue;
      }
      settled.push(stance);
      const rest = met === 0 ? null : this.row(open & ~met);
      seconds[stance] = rest?.seconds[stance] ?? 0;
      places[stance] = rest?.places[stance] ?? 0;
    }
    space.spreadSeconds(seconds, settled);
    if (space.tellsPlaces) space.spreadPlaces(seconds, places, settled);
    return { seconds, places };
  }
}
