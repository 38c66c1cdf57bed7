import type { Explanation } from '../../src/explain/explanation.js';

const IDS: ReadonlySet<string> = new Set(['entries', 'names', 'changes', 'by', 'entry']);

/** What an explanation says, without the ids of the entries that it rests on: the state, the due point and its own numbers. */
export function numbersOf(explanation: Explanation): string {
  return JSON.stringify(explanation, (key, value: unknown) => (IDS.has(key) ? undefined : value));
}
