/**
 * A lower bound from a few parts looked at alone.
 *
 * A pattern keeps some parts and forgets the others: conditions are read as true wherever the forgotten parts could make them so.
 * What is left is small enough to solve outright: from each stance of these parts, with these demands still open, the least
 * seconds of moving *these parts* until all demands are met and the parts stand where they must end. Order rules and walking are
 * left out of it.
 *
 * What a move costs may be shared out among patterns that look at the same part: as long as no second is counted twice, their bounds
 * add up. {@link saturated} says how little of each move's cost would give the same answers, so that the rest is left for others.
 *
 * The same pass finds the places at which a person must yet stand to move these parts, whichever way they do it.
 *
 * Answers are worked out one set of open demands at a time, when first asked for, from the smaller sets outwards.
 */
import { doubled } from './bucket-queue.js';
import { NO_WAY } from './no-way.js';
import type { PatternSpace } from './pattern-space.js';

/** For each move of a problem the part of its seconds that a pattern may count. */
export type MoveCosts = Int32Array;

export class Pattern {
  readonly space: PatternSpace;
  /** For each edge of the space what it costs. */
  #costs: Int32Array;
  /** Set of open demands → where its row begins. */
  readonly #rows = new Map<number, number>();
  /** Rows one after the other, each with a number for every stance: the least seconds still to spend. */
  #seconds: Int32Array;
  /** The same for the places (bit mask) that must still be stood at; empty where no move has a place. */
  #places: Int32Array;

  constructor(space: PatternSpace, costs: MoveCosts) {
    this.space = space;
    this.#costs = space.edges.move.map((move) => costs[move] ?? 0);
    this.#seconds = new Int32Array(space.size * FIRST_ROWS);
    this.#places = new Int32Array(space.tellsPlaces ? space.size * FIRST_ROWS : 0);
  }

  /** The row for a set of open demands; worked out if it is new. */
  row(open: number): number {
    return this.#rows.get(open) ?? this.#work(open);
  }

  /** The least seconds of moving these parts that are still to be spent; {@link NO_WAY} where nothing leads to the end. */
  seconds(row: number, stance: number): number {
    return this.#seconds[row + stance] ?? 0;
  }

  /** The places, as a bit mask, at which a person must still stand to move these parts. */
  places(row: number, stance: number): number {
    return this.#places[row + stance] ?? 0;
  }

  /** The least costs of moves under which all rows worked out so far stay what they are. Rows to come count no more than these. */
  saturate(moves: number): MoveCosts {
    const { meets, edges } = this.space;
    const { move, from, to } = edges;
    const seconds = this.#seconds;
    const least = new Int32Array(moves);
    for (const [open, row] of this.#rows) {
      for (let edge = 0; edge < move.length; edge++) {
        const here = from[edge] ?? 0;
        const there = seconds[row + (to[edge] ?? 0)] ?? 0;
        if (((meets[here] ?? 0) & open) !== 0 || there >= NO_WAY) continue;
        const gap = (seconds[row + here] ?? 0) - there;
        if (gap > (least[move[edge] ?? 0] ?? 0)) least[move[edge] ?? 0] = gap;
      }
    }
    this.#costs = move.map((each) => least[each] ?? 0);
    return least;
  }

  /**
   * A stance that meets open demands takes its values from the row without them: meeting them there and then is free and never
   * hurts. From those stances, and from the goal when nothing is open, values spread backwards along the moves.
   */
  #work(open: number): number {
    const { space } = this;
    const rests = space.alike.map(({ meets }) => ((meets & open) === 0 ? -1 : this.row(open & ~meets)));
    const row = this.#claim(open);
    this.#seconds.fill(NO_WAY, row, row + space.size);
    if (space.tellsPlaces) this.#places.fill(-1, row, row + space.size);
    space.alike.forEach(({ stances }, index) => {
      const rest = rests[index] ?? -1;
      if (rest >= 0) this.#copy(stances, rest, row);
    });
    if (open === 0) this.#end(row);
    space.spreadSeconds(this.#seconds, row, this.#costs);
    if (space.tellsPlaces) space.spreadPlaces(this.#seconds, this.#places, row, open);
    return row;
  }

  #copy(stances: Int32Array, from: number, to: number): void {
    for (let index = 0; index < stances.length; index++) {
      const stance = stances[index] ?? 0;
      this.#seconds[to + stance] = this.#seconds[from + stance] ?? 0;
      this.#places[to + stance] = this.#places[from + stance] ?? 0;
    }
  }

  #end(row: number): void {
    for (const stance of this.space.ends) {
      this.#seconds[row + stance] = 0;
      this.#places[row + stance] = 0;
    }
  }

  /** Room for one row more. */
  #claim(open: number): number {
    const { size, tellsPlaces } = this.space;
    const row = this.#rows.size * size;
    this.#rows.set(open, row);
    if (row + size > this.#seconds.length) {
      this.#seconds = doubled(this.#seconds);
      if (tellsPlaces) this.#places = doubled(this.#places);
    }
    return row;
  }
}

/** Rows that there is room for at first. */
const FIRST_ROWS = 16;
