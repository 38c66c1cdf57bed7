/**
 * Tokens and their kinds, and the two things that are done to tokens beyond reading them.
 */

/** A kind of token. Kinds are compared by identity, and looked up by number where that is quicker. */
export interface TokenKind {
  readonly name: string;
  /** As a message names it: `a number`. */
  readonly label: string;
  readonly index: number;
  /** Other kinds that will do where this one is asked for: a soft word is a name, a name may be a unit. */
  readonly members: ReadonlySet<TokenKind>;
}

/** A token as it stands in a text; what was written oddly is put right in it. */
export interface Token {
  image: string;
  startOffset: number;
  /** Offset of its last character, only where its image is not what was written. */
  endOffset?: number;
  tokenType: TokenKind;
}

/** What stands after the last token. */
export const END_KIND: TokenKind = { name: 'EOF', label: 'the end of the file', index: 0, members: new Set() };

/** Where a token ends; a token that was put right keeps the place of what was written. */
export function endOf(token: Token): number {
  return token.endOffset === undefined ? token.startOffset + token.image.length : token.endOffset + 1;
}

/** Gives a token another kind. */
export function retype(token: Token, kind: TokenKind): void {
  token.tokenType = kind;
}

/** Whether a token will do where a kind is asked for. */
export function isOfKind({ tokenType }: Token, kind: TokenKind): boolean {
  return tokenType === kind || kind.members.has(tokenType);
}
