/**
 * Numbers bit sets: equal sets get the same small number, new ones the next.
 *
 * Sets are kept as rows of 30-bit words in one typed array; the index is an open-addressing hash table at most half full.
 */
export class WordTable {
  readonly #words: number;
  #data: Int32Array;
  #index: Int32Array;
  #size = 0;

  /** @param words how many 32-bit words each set takes, at least 1 */
  constructor(words: number) {
    this.#words = words;
    this.#data = new Int32Array(words * 64);
    this.#index = new Int32Array(128).fill(EMPTY);
  }

  get size(): number {
    return this.#size;
  }

  /** The words of all sets, one set after the other; another array once it has grown. */
  get data(): Int32Array {
    return this.#data;
  }

  /** Word `word` of set `id`. */
  word(id: number, word: number): number {
    return this.#data[id * this.#words + word] ?? 0;
  }

  /** The number of the set whose words are `set`; it is added if it is new. */
  intern(set: Int32Array): number {
    const mask = this.#index.length - 1;
    let slot = this.#hash(set) & mask;
    for (;;) {
      const id = this.#index[slot] ?? EMPTY;
      if (id < 0) return this.#add(set, slot);
      if (this.#equals(id, set)) return id;
      slot = (slot + 1) & mask;
    }
  }

  #add(set: Int32Array, slot: number): number {
    const id = this.#size++;
    if ((id + 1) * this.#words > this.#data.length) {
      const bigger = new Int32Array(this.#data.length * 2);
      bigger.set(this.#data);
      this.#data = bigger;
    }
    this.#data.set(set, id * this.#words);
    this.#index[slot] = id;
    if (this.#size * 2 > this.#index.length) this.#rehash();
    return id;
  }

  #rehash(): void {
    const index = new Int32Array(this.#index.length * 2).fill(EMPTY);
    const mask = index.length - 1;
    for (let id = 0; id < this.#size; id++) {
      let slot = this.#hash(this.#data.subarray(id * this.#words, (id + 1) * this.#words)) & mask;
      while ((index[slot] ?? EMPTY) >= 0) slot = (slot + 1) & mask;
      index[slot] = id;
    }
    this.#index = index;
  }

  #equals(id: number, set: Int32Array): boolean {
    const base = id * this.#words;
    for (let word = 0; word < this.#words; word++) if (this.#data[base + word] !== set[word]) return false;
    return true;
  }

  #hash(set: Int32Array): number {
    let hash = 0x9e3779b9 | 0;
    for (let word = 0; word < this.#words; word++) {
      hash = Math.imul(hash ^ (set[word] ?? 0), 0x85ebca6b);
      hash ^= hash >>> 13;
    }
    return Math.imul(hash, 0xc2b2ae35) ^ (hash >>> 16);
  }
}

/** A slot of the index that no set has taken. */
const EMPTY = -1;
