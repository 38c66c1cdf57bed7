/**
 * JSON with one spelling: keys in the order of the schema, whatever order they were put in.
 */
import { keyOrder } from './key-order.js';

const ranks = /* @__PURE__ */ new Map(/* @__PURE__ */ keyOrder.map((key, rank) => [key, rank]));

/**
 * The keys of objects in schema order, those that the schema does not know after them by code unit. Made for one value: a graph has thousands of
 * objects of few shapes, and each is sorted once.
 */
export function keysInOrder(): (object: object) => readonly string[] {
  // By how many keys there are: few shapes have as many.
  const met: KnownShape[][] = [];
  return (object) => {
    const keys = Object.keys(object);
    const shapes = (met[keys.length] ??= []);
    let known = shapes.find((shape) => keys.every((key, index) => key === shape.keys[index]));
    if (known === undefined) shapes.push((known = { keys, sorted: [...keys].sort(compareKeys) }));
    return known.sorted;
  };
}

interface KnownShape {
  readonly keys: readonly string[];
  readonly sorted: readonly string[];
}

/** The value with the keys of every object in schema order, keys that the schema does not know after them by code unit. */
export function canonical<T>(value: T): T;
export function canonical(value: unknown): unknown {
  const keysOf = keysInOrder();
  const inOrder = (part: unknown): unknown => {
    if (typeof part !== 'object' || part === null) return part;
    if (Array.isArray(part)) return part.map(inOrder);
    const sorted: Record<string, unknown> = {};
    for (const key of keysOf(part)) {
      const member: unknown = Reflect.get(part, key);
      if (member !== undefined) sorted[key] = inOrder(member);
    }
    return sorted;
  };
  return inOrder(value);
}

function compareKeys(a: string, b: string): number {
  return rank(a) - rank(b) || (a < b ? -1 : 1);
}

/** The one text of a value. */
export function canonicalJson(value: unknown): string {
  return JSON.stringify(canonical(value));
}

function rank(key: string): number {
  return ranks.get(key) ?? ranks.size;
}
