/**
 * Counts how often instrumented code asks which mutant is on, and stops it when it has asked too often: a mutant that runs on and on is found by
 * what it does, the same on every machine, and long before a clock would end it.
 */
export class Leash {
  #active = undefined;
  #asked = 0;
  #most = Infinity;

  /** @param {{ activeMutant?: string | undefined }} state what instrumented code knows itself by */
  constructor(state) {
    Object.defineProperty(state, 'activeMutant', {
      configurable: true,
      get: () => {
        if (++this.#asked > this.#most) throw new Error('runs on and on');
        return this.#active;
      },
      set: (active) => {
        this.#active = active;
      },
    });
  }

  /** How often the code has asked since the last {@link from}. */
  get asked() {
    return this.#asked;
  }

  get isSpent() {
    return this.#asked > this.#most;
  }

  /** Begins to count anew. @param {number} most how often the code may ask */
  from(most = Infinity) {
    this.#asked = 0;
    this.#most = most;
  }
}
