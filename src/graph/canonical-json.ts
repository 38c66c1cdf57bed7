/**
 * JSON with one spelling: keys in the order of the schema, whatever order they were put in.
 */
import { keyOrder } from './key-order.js';

const ranks = /* @__PURE__ */ new Map(/* @__PURE__ */ keyOrder.map((key, rank) => [key, rank]));

/** Keys in order, and whether that is how the object has them. */
interface Order {
  readonly keys: readonly string[];
  readonly asIs: boolean;
}

/** By the keys as an object has them, written as JSON: a graph has thousands of objects of few shapes. */
type Orders = Map<string, Order>;

/**
 * The value with the keys of every object in schema order, keys that the schema does not know after them by code unit. What is in order already
 * is taken as it is.
 */
export function canonical<T>(value: T): T;
export function canonical(value: unknown): unknown {
  return inOrder(value, new Map());
}

function inOrder(value: unknown, orders: Orders): unknown {
  if (typeof value !== 'object' || value === null) return value;
  return Array.isArray(value) ? listInOrder(value, orders) : objectInOrder(value as Readonly<Record<string, unknown>>, orders);
}

function listInOrder(list: readonly unknown[], orders: Orders): readonly unknown[] {
  let items: unknown[] | null = null;
  for (let index = 0; index < list.length; index += 1) {
    const item = inOrder(list[index], orders);
    if (items === null && item !== list[index]) items = list.slice(0, index);
    items?.push(item);
  }
  return items ?? list;
}

function objectInOrder(source: Readonly<Record<string, unknown>>, orders: Orders): object {
  const { keys, asIs } = orderOf(source, orders);
  let copy: Record<string, unknown> | null = asIs ? null : {};
  for (const [index, key] of keys.entries()) {
    const value = source[key];
    const member = inOrder(value, orders);
    if (copy === null && (member !== value || value === undefined)) {
      copy = Object.fromEntries(keys.slice(0, index).map((before) => [before, source[before]]));
    }
    if (copy !== null && value !== undefined) copy[key] = member;
  }
  return copy ?? source;
}

function orderOf(source: object, orders: Orders): Order {
  const keys = Object.keys(source);
  const shape = JSON.stringify(keys);
  const known = orders.get(shape);
  if (known !== undefined) return known;
  const sorted = [...keys].sort(compareKeys);
  const order = { keys: sorted, asIs: sorted.every((key, index) => key === keys[index]) };
  orders.set(shape, order);
  return order;
}

/** Which of two keys comes first. */
export function compareKeys(a: string, b: string): number {
  return rank(a) - rank(b) || (a < b ? -1 : 1);
}

/** The one text of a value. */
export function canonicalJson(value: unknown): string {
  return JSON.stringify(canonical(value));
}

function rank(key: string): number {
  return ranks.get(key) ?? ranks.size;
}
