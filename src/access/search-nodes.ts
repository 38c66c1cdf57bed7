/**
 * The states that a search has reached: a stance, a place and a set of done needs, each with the cheapest way found to it so far.
 */
import { doubled } from './bucket-queue.js';
import { WordTable } from './word-table.js';

export class SearchNodes {
  readonly #keys = new WordTable(3);
  readonly #key = new Int32Array(3);
  #cost = new Int32Array(256);
  #bound = new Int32Array(256);
  #parent = new Int32Array(256);
  #through = new Int32Array(256);

  /** For each stance the state looked at last, plus 1; and for each state the one of the same stance before it, likewise. */
  #last = new Int32Array(256);
  #before = new Int32Array(256);

  get size(): number {
    return this.#keys.size;
  }

  /** The number of a state; a new one costs {@link NOT_REACHED} until {@link reach} says otherwise. */
  at(stance: number, place: number, done: number): number {
    this.#key[0] = stance;
    this.#key[1] = place;
    this.#key[2] = done;
    const before = this.#keys.size;
    const node = this.#keys.intern(this.#key);
    if (node === before) this.#add(node);
    return node;
  }

  stance(node: number): number {
    return this.#keys.word(node, 0);
  }

  place(node: number): number {
    return this.#keys.word(node, 1);
  }

  done(node: number): number {
    return this.#keys.word(node, 2);
  }

  cost(node: number): number {
    return this.#cost[node] ?? NOT_REACHED;
  }

  /** Lower bound on what is still to be spent from here; −1 until it is set. */
  bound(node: number): number {
    return this.#bound[node] ?? NONE;
  }

  setBound(node: number, bound: number): void {
    this.#bound[node] = bound;
  }

  /** Records a cheaper way: from `parent` by a move, or by walking (`through` −1). */
  reach(node: number, cost: number, parent: number, through: number): void {
    this.#cost[node] = cost;
    this.#parent[node] = parent;
    this.#through[node] = through;
  }

  /** Notes that the state is looked at, once for all. */
  lookAt(node: number): void {
    const stance = this.stance(node);
    while (stance >= this.#last.length) this.#last = doubled(this.#last);
    if (this.#before[node] !== 0) return;
    this.#before[node] = (this.#last[stance] ?? 0) === 0 ? FIRST : (this.#last[stance] ?? 0);
    this.#last[stance] = node + 1;
  }

  /** The state looked at last of those of a stance; −1: none. */
  lookedAt(stance: number): number {
    return (this.#last[stance] ?? 0) - 1;
  }

  /** The state of the same stance that was looked at before this one; below 0: none. */
  lookedAtBefore(node: number): number {
    return (this.#before[node] ?? FIRST) - 1;
  }

  /** The moves and walks from the start to `node`, first to last. */
  way(node: number): readonly { readonly move: number; readonly place: number }[] {
    const way: { move: number; place: number }[] = [];
    for (let at = node; (this.#parent[at] ?? NONE) >= 0; at = this.#parent[at] ?? NONE)
      way.push({ move: this.#through[at] ?? NONE, place: this.place(at) });
    return way.reverse();
  }

  #add(node: number): void {
    if (node >= this.#cost.length) {
      this.#cost = doubled(this.#cost);
      this.#bound = doubled(this.#bound);
      this.#parent = doubled(this.#parent);
      this.#through = doubled(this.#through);
      this.#before = doubled(this.#before);
    }
    this.#cost[node] = NOT_REACHED;
    this.#bound[node] = NONE;
  }
}

/** No bound yet, no state before it, no move. */
const NONE = -1;

/** Instead of the state before it: it is the first of its stance. */
const FIRST = -1;

const NOT_REACHED = 0x7fffffff;
