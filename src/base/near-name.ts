/**
 * Which of the known names was probably meant.
 *
 * Distance is Damerau–Levenshtein in its optimal-string-alignment form: inserting, leaving out, replacing a letter or
 * swapping two neighbours each cost one.
 */

/** Number of single-letter slips between two words; `limit` cuts the work short and anything beyond it is `limit + 1`. */
export function slipsBetween(a: string, b: string, limit = Number.POSITIVE_INFINITY): number {
  if (Math.abs(a.length - b.length) > limit) return limit + 1;
  // What the two begin and end with in common costs nothing.
  const most = Math.min(a.length, b.length);
  let start = 0;
  while (start < most && a.charCodeAt(start) === b.charCodeAt(start)) start += 1;
  let end = 0;
  while (end < most - start && a.charCodeAt(a.length - 1 - end) === b.charCodeAt(b.length - 1 - end)) end += 1;
  return slipsWithin(a.slice(start, a.length - end), b.slice(start, b.length - end), limit);
}

function slipsWithin(a: string, b: string, limit: number): number {
  // Beginning and end are off already, so a single letter can only be another one.
  if (a.length < 2 && b.length < 2) return Math.min(a.length || b.length, limit + 1);
  let before: number[] = [];
  let above: number[] = [];
  for (let column = 0; column <= b.length; column += 1) above.push(column);
  for (let row = 1; row <= a.length; row += 1) {
    const current = nextRow(a, b, row, above, before);
    if (current.every((cost) => cost > limit)) return limit + 1;
    before = above;
    above = current;
  }
  return Math.min(above[b.length] ?? 0, limit + 1);
}

function nextRow(a: string, b: string, row: number, above: readonly number[], before: readonly number[]): number[] {
  const current = [row];
  for (let column = 1; column <= b.length; column += 1) {
    const same = a[row - 1] === b[column - 1];
    let cost = Math.min((above[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1, (above[column - 1] ?? 0) + (same ? 0 : 1));
    const swapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
    if (swapped) cost = Math.min(cost, (before[column - 2] ?? 0) + 1);
    current.push(cost);
  }
  return current;
}

/**
 * How many more names may be compared letter by letter: one for all that is looked into together, so that thousands of unknown names, each
 * like thousands of known ones, cost no more than this.
 */
export interface Patience {
  left: number;
}

/** Enough for a hundred unknown names among five hundred known ones of like length. */
export function patience(): Patience {
  return { left: 50_000 };
}

/** How many slips still count as the same word: one for short words, a third of the letters for longer ones, never more than three. */
function tolerance(word: string): number {
  return Math.min(3, Math.max(1, Math.floor(word.length / 3)));
}

/**
 * The candidates near enough to `word` to be what was meant, nearest first; equally near ones in the order given. None once the patience is
 * at an end: the names that were not looked at may be nearer than those that were.
 *
 * @example nearNames('evry', ['every', 'after']) // ['every']
 */
export function nearNames(word: string, candidates: Iterable<string>, shared: Patience = patience()): readonly string[] {
  if (word.length > 80) return [];
  const limit = tolerance(word);
  const found: { readonly name: string; readonly slips: number; readonly order: number }[] = [];
  let order = 0;
  for (const name of candidates) {
    if (Math.abs(name.length - word.length) > limit) continue;
    if (shared.left <= 0) return [];
    shared.left -= 1;
    const slips = slipsBetween(word, name, limit);
    // A one-letter word would be "near" every other one.
    if (slips <= limit && slips < Math.max(word.length, name.length)) found.push({ name, slips, order });
    order += 1;
  }
  found.sort((a, b) => a.slips - b.slips || a.order - b.order);
  return [...new Set(found.map((each) => each.name))];
}

/** The nearest candidate, or undefined when none is near enough. */
export function nearName(word: string, candidates: Iterable<string>, shared: Patience = patience()): string | undefined {
  return nearNames(word, candidates, shared)[0];
}
