/**
 * Which known names a misspelt one may have been meant for.
 */

/**
 * Candidates near enough to `name` to be worth suggesting, the nearest first; at most three. Ties go to the candidate that
 * begins alike, then to the order given.
 *
 * Near is an edit distance (insert, delete, change, swap neighbours) of at most a third of the longer name, or the same words in another
 * order (`oil-engine-level` for `engine-oil-level`), or one name's words all found in the other.
 *
 * @example nearNames('engin', ['engine', 'shaft']) // ['engine']
 */
export function nearNames(name: string, candidates: readonly string[]): readonly string[] {
  const scored = [...new Set(candidates)].map((candidate, order) => ({ candidate, order, score: farness(name, candidate) }));
  const near = scored.filter(({ score }) => score <= 1 / 3);
  near.sort((a, b) => a.score - b.score || sharedStart(name, b.candidate) - sharedStart(name, a.candidate) || a.order - b.order);
  return near.slice(0, 3).map(({ candidate }) => candidate);
}

/** 0 for the same name, 1 for nothing in common. */
function farness(name: string, candidate: string): number {
  const a = name.toLowerCase();
  const b = candidate.toLowerCase();
  const longer = Math.max(a.length, b.length, 1);
  // One slip is always forgiven, except between names so short that it makes them wholly different.
  const spelling = editDistance(a, b) / Math.max(longer, longer > 2 ? 4 : 1);
  const oneSlip = longer > 2 && editDistance(a, b) === 1 ? 0.25 : 1;
  return Math.min(spelling, oneSlip, wordFarness(a, b));
}

function wordFarness(a: string, b: string): number {
  const left = a.split(/[-._]/);
  const right = b.split(/[-._]/);
  const shared = left.filter((word) => right.includes(word)).length;
  if (shared === 0) return 1;
  if (shared === left.length && shared === right.length) return 0.15;
  const whole = shared === Math.min(left.length, right.length);
  return whole ? 0.3 + 0.03 * (1 - shared / Math.max(left.length, right.length)) : 1;
}

function sharedStart(a: string, b: string): number {
  let length = 0;
  while (length < a.length && a[length] === b[length]) length += 1;
  return length;
}

/** Optimal string alignment distance (Damerau–Levenshtein without repeated editing of one place). */
function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= b.length; column += 1) {
      const cost = a[row - 1] === b[column - 1] ? 0 : 1;
      const swapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      const changed = Math.min((previous[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1, (previous[column - 1] ?? 0) + cost);
      current.push(swapped ? Math.min(changed, (before[column - 2] ?? 0) + 1) : changed);
    }
    before = previous;
    previous = current;
  }
  return previous[b.length] ?? 0;
}
