/**
 * A priority queue for small whole-number priorities: one stack for each priority, all threaded through one array.
 *
 * Of equal priorities the one pushed last comes first, which sends a search straight on from where it is.
 */
export class BucketQueue {
  readonly #heads: number[] = [];
  #next = new Int32Array(256);
  #items = new Int32Array(256);
  #used = 0;
  #free = -1;
  #lowest = 0;
  #count = 0;

  get isEmpty(): boolean {
    return this.#count === 0;
  }

  /** The lowest priority held; meaningless when empty. */
  get lowest(): number {
    while (this.#lowest < this.#heads.length && (this.#heads[this.#lowest] ?? -1) < 0) this.#lowest++;
    return this.#lowest;
  }

  push(item: number, priority: number): void {
    while (this.#heads.length <= priority) this.#heads.push(-1);
    const cell = this.#cell();
    this.#items[cell] = item;
    this.#next[cell] = this.#heads[priority] ?? -1;
    this.#heads[priority] = cell;
    if (this.#count === 0 || priority < this.#lowest) this.#lowest = priority;
    this.#count++;
  }

  /** Takes the item with the lowest priority, or −1 when there is none. */
  pop(): number {
    if (this.#count === 0) return -1;
    const priority = this.lowest;
    const cell = this.#heads[priority] ?? -1;
    this.#heads[priority] = this.#next[cell] ?? -1;
    this.#next[cell] = this.#free;
    this.#free = cell;
    this.#count--;
    return this.#items[cell] ?? -1;
  }

  #cell(): number {
    if (this.#free >= 0) {
      const cell = this.#free;
      this.#free = this.#next[cell] ?? -1;
      return cell;
    }
    if (this.#used === this.#items.length) {
      this.#items = doubled(this.#items);
      this.#next = doubled(this.#next);
    }
    return this.#used++;
  }
}

/** The same numbers in an array twice as long. */
export function doubled(array: Int32Array): Int32Array<ArrayBuffer> {
  const bigger = new Int32Array(array.length * 2);
  bigger.set(array);
  return bigger;
}
