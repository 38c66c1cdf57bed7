/**
 * The two things that this project does to Chevrotain's tokens beyond reading them.
 */
import type { IToken } from 'chevrotain';

/** Where a token ends; a token that was put right keeps the place of what was written. */
export function endOf(token: IToken): number {
  return token.endOffset === undefined ? token.startOffset + token.image.length : token.endOffset + 1;
}

/** Gives a token another kind. Kinds are compared by number, so both fields must go together. */
export function retype(token: IToken, kind: { readonly tokenTypeIdx?: number } & IToken['tokenType']): void {
  token.tokenType = kind;
  token.tokenTypeIdx = kind.tokenTypeIdx ?? 0;
}
