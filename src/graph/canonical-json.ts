/**
 * JSON with one spelling: keys in the order of the schema, whatever order they were put in.
 */
import { keyOrder } from './key-order.js';

const ranks = new Map(keyOrder.map((key, rank) => [key, rank]));

/** The value with the keys of every object in schema order, keys that the schema does not know after them by code unit. */
export function canonical<T>(value: T): T;
export function canonical(value: unknown): unknown {
  if (Array.isArray(value)) return value.map((item: unknown) => canonical(item));
  if (typeof value !== 'object' || value === null) return value;
  const source: Readonly<Record<string, unknown>> = { ...value };
  const keys = Object.keys(source).sort((a, b) => rank(a) - rank(b) || (a < b ? -1 : 1));
  const sorted: Record<string, unknown> = {};
  for (const key of keys) if (source[key] !== undefined) sorted[key] = canonical(source[key]);
  return sorted;
}

/** The one text of a value. */
export function canonicalJson(value: unknown): string {
  return JSON.stringify(canonical(value));
}

function rank(key: string): number {
  return ranks.get(key) ?? ranks.size;
}
