/**
 * The entries that were written on this device: which the logbook has, and which are still to be handed over.
 *
 * Pure. Nothing is lost and nothing is counted twice: entries are told apart by their ids, and two states of one device come
 * together as the union of both.
 */
import { type Entry, validateEntry } from '../../../engine.js';

/** What is kept on the device. */
export interface Kept {
  /** In the order in which they were written. */
  readonly entries: readonly Entry[];
  /** Ids of entries that somebody said have arrived. */
  readonly handedOver: readonly string[];
}

/** Nothing yet. */
const NOTHING_KEPT: Kept = { entries: [], handedOver: [] };

/** Reads what was kept; what cannot be understood is left out and counted, so that the page can say so. */
export function readKept(text: string | null): { readonly kept: Kept; readonly broken: number } {
  if (text === null) return { kept: NOTHING_KEPT, broken: 0 };
  const value = parse(text);
  const entries = listIn(value, 'entries').map(validateEntry);
  const handedOver = listIn(value, 'handedOver').filter((id): id is string => typeof id === 'string');
  const good = entries.flatMap((read) => (read.kind === 'entry' ? [read.entry] : []));
  return { kept: { entries: good, handedOver }, broken: value === null ? 1 : entries.length - good.length };
}

/** Both together, each entry once; of two with one id the first stands. */
export function unite(first: Kept, second: Kept): Kept {
  const known = new Set(first.entries.map(({ id }) => id));
  return {
    entries: [...first.entries, ...second.entries.filter(({ id }) => !known.has(id))],
    handedOver: [...new Set([...first.handedOver, ...second.handedOver])],
  };
}

/** Those that nobody has said to have arrived, and that the logbook inside the page does not have. */
export function notHandedOver(kept: Kept, logbook: readonly Entry[]): readonly Entry[] {
  const arrived = new Set([...kept.handedOver, ...logbook.map(({ id }) => id)]);
  return kept.entries.filter(({ id }) => !arrived.has(id));
}

/** The logbook with what was written since. */
export function withKept(logbook: readonly Entry[], kept: Kept): readonly Entry[] {
  const known = new Set(logbook.map(({ id }) => id));
  return [...logbook, ...kept.entries.filter(({ id }) => !known.has(id))];
}

/** One entry a line, as `duewright merge` takes them. */
export function linesOf(entries: readonly Entry[]): string {
  return entries.map((entry) => `${JSON.stringify(entry)}\n`).join('');
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function listIn(value: unknown, key: string): readonly unknown[] {
  if (typeof value !== 'object' || value === null) return [];
  const list: unknown = (value as Readonly<Record<string, unknown>>)[key];
  return Array.isArray(list) ? list : [];
}
