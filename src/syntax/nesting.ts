/**
 * Bounds nesting and length before anything is parsed: a recursive parser would otherwise run out of stack on a text made for it, and what
 * is checked about one declaration all at once would take too long.
 */
import type { Token } from './token.js';
import type { Vocabulary } from './tokens.js';

/** The token at which parentheses or a chain of `not` or `lesser of` exceed the limit; undefined if none does. */
export function tooDeep(tokens: readonly Token[], vocabulary: Vocabulary, limit: number): Token | undefined {
  const { LParen, RParen, word } = vocabulary;
  let depth = 0;
  let chain = 0;
  for (const token of tokens) {
    const kind = token.tokenType;
    if (vocabulary.opensDeclaration.has(kind)) depth = 0;
    if (kind === LParen) depth += 1;
    else if (kind === RParen) depth = Math.max(0, depth - 1);
    if (kind === word.not || kind === word.lesser) chain += 1;
    else if (kind !== LParen && kind !== word.of) chain = 0;
    if (depth + chain > limit) return token;
  }
  return undefined;
}

/** The token at which a declaration (or the header) exceeds the limit of words; undefined if none does. */
export function tooLong(tokens: readonly Token[], vocabulary: Vocabulary, limit: number): Token | undefined {
  let words = 0;
  return tokens.find(({ tokenType }) => {
    words = vocabulary.opensDeclaration.has(tokenType) ? 1 : words + 1;
    return words > limit;
  });
}
