import { MinHeap } from './min-heap.js';

/**
 * A priority queue for whole-number priorities: one stack for each priority, all threaded through one array.
 *
 * Which priorities are in use is kept in a heap, so that long times take no more room than short ones.
 *
 * Of equal priorities the one pushed last comes first, which sends a search straight on from where it is.
 */
export class BucketQueue {
  /** The top cell of each stack; −1: it is empty, and its priority still in the heap. */
  readonly #heads = new Map<number, number>();
  readonly #priorities = new MinHeap();
  #next = new Int32Array(256);
  #items = new Int32Array(256);
  #used = 0;
  #free = NONE;
  #lowest = Infinity;
  #count = 0;

  get isEmpty(): boolean {
    return this.#count === 0;
  }

  /** The lowest priority held; meaningless when empty. */
  get lowest(): number {
    while (this.#count > 0 && (this.#heads.get(this.#lowest) ?? NONE) < 0) {
      this.#heads.delete(this.#lowest);
      this.#lowest = this.#priorities.pop().priority;
    }
    return this.#lowest;
  }

  push(item: number, priority: number): void {
    const head = this.#heads.get(priority);
    if (head === undefined) this.#open(priority);
    const cell = this.#cell();
    this.#items[cell] = item;
    this.#next[cell] = head ?? NONE;
    this.#heads.set(priority, cell);
    this.#count++;
  }

  /** Takes the item with the lowest priority, or −1 when there is none. */
  pop(): number {
    if (this.#count === 0) return NONE;
    const priority = this.lowest;
    const cell = this.#heads.get(priority) ?? NONE;
    this.#heads.set(priority, this.#next[cell] ?? NONE);
    this.#next[cell] = this.#free;
    this.#free = cell;
    this.#count--;
    return this.#items[cell] ?? NONE;
  }

  /** A stack of its own for a new priority; the lowest is kept out of the heap. */
  #open(priority: number): void {
    if (priority >= this.#lowest) {
      this.#priorities.push(0, priority);
      return;
    }
    if (this.#lowest < Infinity) this.#priorities.push(0, this.#lowest);
    this.#lowest = priority;
  }

  #cell(): number {
    if (this.#free >= 0) {
      const cell = this.#free;
      this.#free = this.#next[cell] ?? NONE;
      return cell;
    }
    if (this.#used === this.#items.length) {
      this.#items = doubled(this.#items);
      this.#next = doubled(this.#next);
    }
    return this.#used++;
  }
}

/** No cell, and no item. */
const NONE = -1;

/** The same numbers in an array twice as long. */
export function doubled(array: Int32Array): Int32Array<ArrayBuffer> {
  const bigger = new Int32Array(array.length * 2);
  bigger.set(array);
  return bigger;
}
