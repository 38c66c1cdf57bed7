/**
 * Characters to tokens: at each place the first pattern that fits.
 */
import type { Token, TokenKind } from './token.js';

/** How a kind of token is written. */
export interface Pattern {
  readonly kind: TokenKind;
  /** Sticky. */
  readonly written: RegExp;
  /** The characters below 128 that it can begin with; any other character is tried with every pattern. */
  readonly begins: RegExp;
}

/** Where no pattern fits, up to where one does again. */
export interface Unreadable {
  readonly offset: number;
  readonly length: number;
}

/** Splits texts by patterns that are tried in order. One instance splits any number of texts. */
export class Splitter {
  private readonly tried: (readonly Pattern[] | undefined)[] = [];

  constructor(private readonly patterns: readonly Pattern[]) {}

  /** Every token of a text, comments among them; of spaces and line ends between them none is made. Never throws. */
  split(text: string): { readonly tokens: readonly Token[]; readonly unreadable: readonly Unreadable[] } {
    const tokens: Token[] = [];
    const unreadable: Unreadable[] = [];
    let offset = 0;
    while (offset < text.length) {
      if (isGap(text, offset)) {
        offset += 1;
        continue;
      }
      const pattern = this.patternAt(text, offset);
      if (pattern === undefined) {
        const start = offset;
        do offset += 1;
        while (offset < text.length && !isGap(text, offset) && this.patternAt(text, offset) === undefined);
        unreadable.push({ offset: start, length: offset - start });
      } else {
        const end = pattern.written.lastIndex;
        tokens.push({ image: text.slice(offset, end), startOffset: offset, tokenType: pattern.kind });
        offset = end;
      }
    }
    return { tokens, unreadable };
  }

  /** The first pattern that fits at a place; its `lastIndex` is then where the token ends. */
  private patternAt(text: string, offset: number): Pattern | undefined {
    const patterns = this.patternsFor(text.charCodeAt(offset));
    // By index: it runs for every word and every gap of a text.
    for (let index = 0; index < patterns.length; index += 1) {
      const pattern = patterns[index];
      if (pattern === undefined) continue;
      pattern.written.lastIndex = offset;
      if (pattern.written.test(text)) return pattern;
    }
    return undefined;
  }

  private patternsFor(code: number): readonly Pattern[] {
    if (code > 127) return this.patterns;
    return (this.tried[code] ??= this.patterns.filter(({ begins }) => begins.test(String.fromCharCode(code))));
  }
}

/** A space, a tab or a line end. */
function isGap(text: string, offset: number): boolean {
  const code = text.charCodeAt(offset);
  return code === 32 || code === 10 || code === 13 || code === 9;
}
