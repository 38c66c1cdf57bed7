/**
 * A priority queue for priorities of any size: a binary heap. Of equal priorities any may come first.
 */
export class MinHeap {
  readonly #items: number[] = [];
  readonly #priorities: number[] = [];

  get isEmpty(): boolean {
    return this.#items.length === 0;
  }

  push(item: number, priority: number): void {
    let at = this.#items.length;
    for (let up = (at - 1) >> 1; at > 0 && (this.#priorities[up] ?? 0) > priority; up = (at - 1) >> 1) {
      this.#put(at, this.#items[up] ?? 0, this.#priorities[up] ?? 0);
      at = up;
    }
    this.#put(at, item, priority);
  }

  /** Takes the item with the lowest priority; the heap must not be empty. */
  pop(): { readonly item: number; readonly priority: number } {
    const least = { item: this.#items[0] ?? 0, priority: this.#priorities[0] ?? Infinity };
    const item = this.#items.pop() ?? 0;
    const priority = this.#priorities.pop() ?? Infinity;
    if (this.#items.length > 0) this.#sink(item, priority);
    return least;
  }

  #sink(item: number, priority: number): void {
    let at = 0;
    for (;;) {
      const left = 2 * at + 1;
      const down = (this.#priorities[left + 1] ?? Infinity) < (this.#priorities[left] ?? Infinity) ? left + 1 : left;
      if (down >= this.#items.length || (this.#priorities[down] ?? Infinity) >= priority) break;
      this.#put(at, this.#items[down] ?? 0, this.#priorities[down] ?? 0);
      at = down;
    }
    this.#put(at, item, priority);
  }

  #put(at: number, item: number, priority: number): void {
    this.#items[at] = item;
    this.#priorities[at] = priority;
  }
}
