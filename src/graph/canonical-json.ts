/**
 * JSON with one spelling: keys in the order of the schema, whatever order they were put in.
 */
import { keyOrder } from './key-order.js';

const ranks = /* @__PURE__ */ new Map(/* @__PURE__ */ keyOrder.map((key, rank) => [key, rank]));

/**
 * The value with the keys of every object in schema order, keys that the schema does not know after them by code unit. What is in order already
 * is taken as it is.
 */
export function canonical<T>(value: T): T;
export function canonical(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  return Array.isArray(value) ? canonicalList(value) : canonicalObject(value as Readonly<Record<string, unknown>>);
}

function canonicalList(list: readonly unknown[]): readonly unknown[] {
  const items = list.map((item) => canonical(item));
  return items.every((item, index) => item === list[index]) ? list : items;
}

function canonicalObject(source: Readonly<Record<string, unknown>>): object {
  const keys = Object.keys(source);
  let same = inOrder(keys);
  if (!same) keys.sort(compareKeys);
  const sorted: Record<string, unknown> = {};
  for (const key of keys) {
    const value = source[key];
    const member = canonical(value);
    if (member !== value || value === undefined) same = false;
    if (value !== undefined) sorted[key] = member;
  }
  return same ? source : sorted;
}

function inOrder(keys: readonly string[]): boolean {
  for (let index = 1; index < keys.length; index += 1) if (compareKeys(keys[index - 1] ?? '', keys[index] ?? '') > 0) return false;
  return true;
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
