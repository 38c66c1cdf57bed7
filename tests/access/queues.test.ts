/** The queues and tables that the search runs on, against the plainest things that do the same. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BucketQueue } from '../../src/access/bucket-queue.js';
import { MinHeap } from '../../src/access/min-heap.js';
import { WordTable } from '../../src/access/word-table.js';

/** A priority to push, or `null` to pop. */
const steps = fc.array(fc.option(fc.nat(12), { freq: 3 }), { maxLength: 60 });

describe('the bucket queue', () => {
  test('gives the lowest first, and of equals the one that came last', () => {
    fc.assert(
      fc.property(steps, (list) => {
        const queue = new BucketQueue();
        const held: { readonly item: number; readonly priority: number }[] = [];
        list.forEach((priority, item) => {
          if (priority !== null) {
            queue.push(item, priority);
            held.push({ item, priority });
          } else {
            const lowest = Math.min(...held.map((each) => each.priority));
            const at = held.findLastIndex((each) => each.priority === lowest);
            if (held.length > 0) expect(queue.lowest).toBe(lowest);
            expect(queue.pop()).toBe(held.splice(at, held.length === 0 ? 0 : 1)[0]?.item ?? -1);
          }
          expect(queue.isEmpty).toBe(held.length === 0);
        });
      }),
    );
  });

  test('grows, and uses room again', () => {
    const queue = new BucketQueue();
    for (const round of [1, 2, 3]) {
      for (let item = 0; item < 600; item++) queue.push(item, (item * 7 * round) % 11);
      const popped = Array.from({ length: 600 }, () => queue.pop());
      expect(new Set(popped).size).toBe(600);
      const priorities = popped.map((item) => (item * 7 * round) % 11);
      expect(priorities).toEqual([...priorities].sort((a, b) => a - b));
      expect(queue.pop()).toBe(-1);
    }
  });
});

describe('the heap', () => {
  test('gives all, the lowest first', () => {
    fc.assert(
      fc.property(steps, (list) => {
        const heap = new MinHeap();
        const held = new Map<number, number>();
        const pop = (): void => {
          const { item, priority } = heap.pop();
          expect(priority).toBe(Math.min(...held.values()));
          expect(held.get(item)).toBe(priority);
          held.delete(item);
        };
        list.forEach((priority, item) => {
          if (priority !== null) {
            heap.push(item, priority);
            held.set(item, priority);
          } else if (held.size > 0) pop();
          expect(heap.isEmpty).toBe(held.size === 0);
        });
        while (held.size > 0) pop();
        expect(heap.isEmpty).toBe(true);
      }),
    );
  });
});

describe('the table of bit sets', () => {
  test.each([1, 2, 3])('numbers sets of %i words as they come, each once', (words) => {
    const table = new WordTable(words);
    const set = (index: number): Int32Array =>
      Int32Array.from({ length: words }, (_, word) => (word === index % words ? index * 37 : index >> 3));
    const sets = Array.from({ length: 400 }, (_, index) => set(index));
    const distinct = [...new Set(sets.map((each) => each.join()))];
    const numbers = sets.map((each) => table.intern(each));
    expect(numbers).toEqual(sets.map((each) => distinct.indexOf(each.join())));
    expect(sets.map((each) => table.intern(each))).toEqual(numbers);
    expect(table.size).toBe(distinct.length);
    sets.forEach((each, index) => {
      expect(Array.from(each, (_, word) => table.word(numbers[index] ?? -1, word))).toEqual([...each]);
    });
  });

  test('keeps the first number too as it grows, whatever the set', () => {
    for (let first = 0; first < 40; first++) {
      const table = new WordTable(1);
      const sets = Array.from({ length: 300 }, (_, index) => Int32Array.of(first + 41 * index));
      sets.forEach((set, index) => expect(table.intern(set)).toBe(index));
      sets.forEach((set, index) => expect(table.intern(set)).toBe(index));
    }
  });
});
