import type { EntryProblem } from '../../engine.js';

/** What is wrong with an entry, in one line: `on: a day that exists, as YYYY-MM-DD; minutes: at least 0`. */
export function entryProblemWords(problems: readonly EntryProblem[]): string {
  return problems.map(({ path, message }) => (path === '' ? message : `${path}: ${message}`)).join('; ');
}
