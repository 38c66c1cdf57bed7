import { lex } from './lex.js';
import { machinery } from './whole-machinery.js';
import { endOf, type Token } from './token.js';
import type { CommentNode } from './tree.js';

/** One token as it is written. */
export interface WrittenToken {
  readonly start: number;
  /** Just past its last character. */
  readonly end: number;
  readonly text: string;
}

/** All that is written in a text, in the order in which it stands. */
export interface WrittenWords {
  readonly tokens: readonly WrittenToken[];
  readonly comments: readonly CommentNode[];
}

/**
 * The tokens of a text as its author wrote them, in order, without white space and comments.
 *
 * @example readTokens('every 100 h').map(({ text }) => text) // ['every', '100', 'h']
 */
export function readTokens(text: string): readonly WrittenToken[] {
  return readWords(text).tokens;
}

/** As {@link readTokens}, with the comments. */
export function readWords(text: string): WrittenWords {
  const { tokens, comments } = lex(text, 0, machinery());
  return { tokens: asWritten(tokens, text), comments };
}

/** Tokens of a text, some of which may stand for what was written in an odd form, as they are written. */
export function asWritten(tokens: readonly Token[], text: string): readonly WrittenToken[] {
  return tokens.map((token) => {
    const [start, end] = [token.startOffset, endOf(token)];
    return { start, end, text: text.slice(start, end) };
  });
}
