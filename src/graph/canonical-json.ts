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
  const start: Shape = { longer: new Map() };
  return (object) => {
    let shape = start;
    // Plain objects have no keys but their own, and to list those of each takes a list each.
    for (const key in object) shape = longerBy(shape, key);
    return (shape.sorted ??= Object.keys(object).sort(compareKeys));
  };
}

/** The keys of some objects, in the order in which those have them: a shape, and what comes of it with one key more. */
interface Shape {
  readonly longer: Map<string, Shape>;
  sorted?: readonly string[];
}

function longerBy({ longer }: Shape, key: string): Shape {
  let shape = longer.get(key);
  if (shape === undefined) longer.set(key, (shape = { longer: new Map() }));
  return shape;
}

/** The value with the keys of every object in schema order, keys that the schema does not know after them by code unit. */
export function canonical<T>(value: T): T;
export function canonical(value: unknown): unknown {
  const keysOf = keysInOrder();
  const inOrder = (part: unknown): unknown => {
    if (typeof part !== 'object' || part === null) return part;
    // Most lists are empty: those stay as they are.
    if (Array.isArray(part)) return part.length === 0 ? part : part.map(inOrder);
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
