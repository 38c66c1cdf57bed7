/**
 * The exact search: A* over stance × place × needs done.
 *
 * Every need that the present stance and place allow is done at once (see {@link DoneSets.absorb}); what is left to decide is which
 * part to move next and where to walk. The bound adds up, over patterns that share no part, the least seconds of moving those
 * parts, and the least walking past all places that must still be stood at. It never overstates, so the first end that leaves the
 * queue is an optimum. Two divisions of the parts into patterns are tried, and the better of the two bounds is taken.
 *
 * A state is left alone if another, already looked at, has the same stance, has done at least as much and could walk over at no
 * greater cost: whatever can be done from the one can be done from the other.
 *
 * Tie rule: of equal estimates the state reached last is looked at first, and of the moves open to it the one written first in the
 * schedule is tried last into the queue, hence first out of it. Nothing else decides, so equal problems give equal answers.
 */
import { BucketQueue } from './bucket-queue.js';
import { DoneSets } from './done-sets.js';
import type { EffectiveNeed } from './effective-needs.js';
import { NO_WAY } from './no-way.js';
import type { Pattern } from './pattern.js';
import type { AccessProblem, SearchCaps } from './problem.js';
import { SearchNodes } from './search-nodes.js';
import { StanceGraph } from './stance-graph.js';
import { WalkBound } from './walk-bound.js';

/** A move (index) or a walk (−1), with the place at which the person then is (−1: anywhere). */
export interface Leg {
  readonly move: number;
  readonly place: number;
}

export type RunResult =
  | { readonly kind: 'found'; readonly legs: readonly Leg[]; readonly cost: number; readonly expanded: number }
  | { readonly kind: 'exhausted'; readonly expanded: number }
  | { readonly kind: 'capped'; readonly atLeast: number; readonly expanded: number };

export interface RunSettings {
  readonly caps: SearchCaps;
  /** 1 for an exact search; more trusts the bound more than it deserves, and finds something sooner. */
  readonly weight: number;
}

/**
 * One run over one problem, whose distinct needs and bounds are given. Costs are seconds of moving and walking; what the needs
 * themselves take is the same in every order.
 */
export function runSearch(problem: AccessProblem, needs: readonly EffectiveNeed[], sums: PatternSums, settings: RunSettings): RunResult {
  return new Run(problem, needs, sums, settings).go();
}

/** The bounds of the patterns in each list add up; of the sums the greatest counts. */
export type PatternSums = readonly (readonly Pattern[])[];

/** Ways out of a state that count as one state looked at: a machine of many parts has more. */
const WAYS_OUT = 16;

/** A stance, with all that is remembered of it, takes about as much memory as so many states. */
const STANCE_WEIGHT = 3;

class Run {
  readonly #problem: AccessProblem;
  readonly #settings: RunSettings;
  readonly #stances: StanceGraph;
  readonly #dones: DoneSets;
  readonly #walking: WalkBound;
  readonly #nodes = new SearchNodes();
  readonly #queue = new BucketQueue();
  readonly #patterns: readonly Pattern[];
  /** 1 for each pattern that is the first of a sum. */
  readonly #begins: Uint8Array;
  #expanded = 0;
  #reached = 0;

  constructor(problem: AccessProblem, needs: readonly EffectiveNeed[], sums: PatternSums, settings: RunSettings) {
    const patterns = sums.flat();
    this.#begins = Uint8Array.from(sums.flatMap((sum) => sum.map((_, index) => (index === 0 ? 1 : 0))));
    this.#patterns = patterns;
    this.#problem = problem;
    this.#settings = settings;
    this.#stances = new StanceGraph(problem, needs, patterns);
    this.#dones = new DoneSets(needs, patterns, problem.walk.length);
    this.#walking = new WalkBound(problem.walk);
  }

  go(): RunResult {
    const { stance, place } = this.#problem.start;
    this.#reach(this.#stances.numberOf(stance), place ?? -1, this.#dones.none(), 0, -1, -1);
    while (!this.#queue.isEmpty) {
      const estimate = this.#queue.lowest;
      const node = this.#queue.pop();
      if (this.#estimate(node) < estimate) continue;
      if (this.#isEnd(node)) return { kind: 'found', legs: this.#nodes.way(node), cost: this.#nodes.cost(node), expanded: this.#expanded };
      if (this.#isOutdone(node)) continue;
      if (this.#isSpent()) return { kind: 'capped', atLeast: estimate, expanded: this.#expanded };
      this.#expand(node);
    }
    return { kind: 'exhausted', expanded: this.#expanded };
  }

  #isOutdone(node: number): boolean {
    const stance = this.#nodes.stance(node);
    const [done, place, cost] = [this.#nodes.done(node), this.#nodes.place(node), this.#nodes.cost(node)];
    for (let other = this.#nodes.lookedAt(stance); other >= 0; other = this.#nodes.lookedAtBefore(other)) {
      if (other === node || !this.#dones.isWithin(done, this.#nodes.done(other))) continue;
      // Whoever stands somewhere is at no cost "anywhere": from a place no walk leads there.
      if (this.#nodes.cost(other) + this.#walk(this.#nodes.place(other), place) <= cost) return true;
    }
    this.#nodes.lookAt(node);
    return false;
  }

  #isSpent(): boolean {
    const { expanded, held } = this.#settings.caps;
    const room = this.#nodes.size + STANCE_WEIGHT * this.#stances.size;
    return this.#expanded >= expanded || this.#reached >= WAYS_OUT * expanded || room >= held;
  }

  #isEnd(node: number): boolean {
    if (!this.#dones.facts(this.#nodes.done(node)).isComplete) return false;
    const stance = this.#nodes.stance(node);
    return this.#problem.goal.every((position, part) => position === null || this.#stances.has(stance, part, position));
  }

  #expand(node: number): void {
    this.#expanded++;
    this.#walkToNeeds(node);
    const place = this.#nodes.place(node);
    const exits = this.#stances.exits(this.#nodes.stance(node));
    for (let index = exits.length - 2; index >= 0; index -= 2) {
      const move = this.#problem.moves[exits[index] ?? 0];
      if (move === undefined) continue;
      const there = move.place ?? place;
      this.#reach(
        exits[index + 1] ?? 0,
        there,
        this.#nodes.done(node),
        this.#nodes.cost(node) + this.#walk(place, there) + move.seconds,
        node,
        exits[index] ?? 0,
      );
    }
  }

  /** Walks to each other place at which an open need can be met as the machine stands. */
  #walkToNeeds(node: number): void {
    const [stance, here, done] = [this.#nodes.stance(node), this.#nodes.place(node), this.#nodes.done(node)];
    const met = this.#stances.met(stance);
    for (let open = this.#dones.facts(done).places, there = 0; there < this.#problem.walk.length; there++) {
      if (there === here || (there < 30 && ((open >> there) & 1) === 0)) continue;
      const after = this.#dones.absorb(done, this.#stances.metWords, met, there);
      if (after !== done) this.#reach(stance, there, after, this.#nodes.cost(node) + this.#walk(here, there), node, -1);
    }
  }

  #walk(from: number, to: number): number {
    return from < 0 || from === to ? 0 : (this.#problem.walk[from]?.[to] ?? Infinity);
  }

  #reach(stance: number, place: number, doneBefore: number, cost: number, parent: number, through: number): void {
    this.#reached++;
    if (cost >= NO_WAY) return;
    const met = this.#stances.met(stance);
    const done = this.#dones.absorb(doneBefore, this.#stances.metWords, met, place);
    const node = this.#nodes.at(stance, place, done);
    if (cost >= this.#nodes.cost(node)) return;
    if (this.#nodes.bound(node) < 0) this.#nodes.setBound(node, this.#bound(stance, place, done));
    if (this.#nodes.bound(node) >= NO_WAY) return;
    this.#nodes.reach(node, cost, parent, through);
    this.#queue.push(node, this.#estimate(node));
  }

  #estimate(node: number): number {
    return this.#nodes.cost(node) + Math.floor(this.#settings.weight * this.#nodes.bound(node));
  }

  #bound(stance: number, place: number, done: number): number {
    const facts = this.#dones.facts(done);
    let [seconds, best] = [0, 0];
    let places = facts.places;
    for (let index = 0; index < facts.rows.length; index++) {
      if (this.#begins[index] === 1) {
        best = Math.max(best, seconds);
        seconds = 0;
      }
      const pattern = this.#patterns[index];
      if (pattern === undefined) continue;
      const [row, number] = [facts.rows[index] ?? 0, this.#stances.patternNumber(stance, index)];
      const least = pattern.seconds(row, number);
      if (least >= NO_WAY) return NO_WAY;
      seconds += least;
      places |= pattern.places(row, number);
    }
    const walking = this.#walking.seconds(place, places);
    return Number.isFinite(walking) ? Math.max(best, seconds) + walking : NO_WAY;
  }
}
