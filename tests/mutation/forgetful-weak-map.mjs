/**
 * A `WeakMap` that forgets everything at `forget()`. What a run of the code keeps by graph (an index, say) was worked out by one mutant, and
 * must not answer for the next.
 */
let age = 0;

/** Empties every map there is. */
export function forget() {
  age += 1;
}

export class ForgetfulWeakMap {
  #age = age;
  #kept = new WeakMap();

  #now() {
    if (this.#age !== age) {
      this.#kept = new WeakMap();
      this.#age = age;
    }
    return this.#kept;
  }

  get(key) {
    return this.#now().get(key);
  }

  has(key) {
    return this.#now().has(key);
  }

  set(key, value) {
    this.#now().set(key, value);
    return this;
  }

  delete(key) {
    return this.#now().delete(key);
  }
}
