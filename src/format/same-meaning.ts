/**
 * Whether two texts say the same: the same tree with positions left out, and the same words and comments in the same order.
 */
import type { WrittenToken, WrittenWords } from '../syntax/read-tokens.js';
import type { FileNode } from '../syntax/tree.js';

/** A text as it was read: its tree, and its tokens in the order in which they stand. */
export interface ReadText {
  readonly file: FileNode;
  readonly tokens: readonly WrittenToken[];
}

/** True if layout is all that differs. */
export function sameMeaning(before: ReadText, after: ReadText): boolean {
  return isSame(before.file, after.file) && sameWords(wordsOf(before), wordsOf(after));
}

/** True if the same words, signs and comments stand in the same order. */
export function sameWords(before: WrittenWords, after: WrittenWords): boolean {
  return isSequence(written(before), written(after));
}

/** What is written in a text, without its tree. */
export function wordsOf({ file: { comments }, tokens }: ReadText): WrittenWords {
  return { tokens, comments };
}

/** Values that are alike but for where they stood, and for comments, which may hang elsewhere on the tree. */
function isSame(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  if (Array.isArray(a)) return Array.isArray(b) && a.length === b.length && a.every((item, index) => isSame(item, b[index]));
  const same = Object.keys(a).every((name) => isLayout(name) || isSame(Reflect.get(a, name), Reflect.get(b, name)));
  return same && Object.keys(b).every((name) => isLayout(name) || name in a || Reflect.get(b, name) === undefined);
}

function isLayout(name: string): boolean {
  return name === 'at' || name === 'comments';
}

/** Tokens and comments in the order in which they stand. */
function written({ tokens, comments }: WrittenWords): readonly string[] {
  const all: string[] = [];
  let next = 0;
  for (const { at, text } of comments) {
    for (let token = tokens[next]; token !== undefined && token.start < at.start; token = tokens[next]) {
      all.push(token.text);
      next += 1;
    }
    all.push(text.trimEnd());
  }
  for (; next < tokens.length; next += 1) all.push(tokens[next]?.text ?? '');
  return all;
}

function isSequence(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((each, index) => each === b[index]);
}
