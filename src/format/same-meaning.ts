/**
 * Whether two texts say the same: the same tree with positions left out, and the same words and comments in the same order.
 */
import { parse } from '../syntax/parse.js';
import { readTokens } from '../syntax/read-tokens.js';
import type { FileNode } from '../syntax/tree.js';

/** True if layout is all that differs. */
export function sameMeaning(before: string, after: string): boolean {
  const [from, to] = [parse(before), parse(after)];
  if (from.file === null || to.file === null || to.diagnostics.length > from.diagnostics.length) return false;
  return withoutPlaces(from.file) === withoutPlaces(to.file) && isSequence(written(before, from.file), written(after, to.file));
}

function withoutPlaces(file: FileNode): string {
  return JSON.stringify(file, (key, value: unknown) => (key === 'at' || key === 'comments' ? undefined : value));
}

/** Tokens and comments in the order in which they stand. */
function written(text: string, { comments }: FileNode): readonly string[] {
  const remarks = comments.map(({ at, text: words }) => ({ start: at.start, text: words.trimEnd() }));
  return [...readTokens(text), ...remarks].sort((a, b) => a.start - b.start).map((each) => each.text);
}

function isSequence(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((each, index) => each === b[index]);
}
