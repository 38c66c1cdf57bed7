/**
 * Takes the place of src/syntax/rule-reader.ts: the same grammar, read by Chevrotain.
 */
import { EmbeddedActionsParser, EOF, isRecognitionException, Lexer, type IToken, type TokenType } from 'chevrotain';
import { expected, oneOf } from '../../src/syntax/plain-errors.js';
import type { Attempt } from '../../src/syntax/rule-reader.js';
import { END_KIND, type Token, type TokenKind } from '../../src/syntax/token.js';

const END: Token = { image: '', startOffset: Number.NaN, endOffset: Number.NaN, tokenType: END_KIND };

/** A token of Chevrotain's as one of ours: they differ at the end of the file only. */
function asOurs(token: IToken | undefined): Token {
  return token === undefined || token.tokenType === EOF ? END : (token as unknown as Token);
}

/** What Chevrotain has to know of our kinds, added to them. */
function taught(kinds: readonly TokenKind[]): TokenType[] {
  const theirs = kinds.map((kind): TokenType => {
    const categories = kinds.filter(({ members }) => members.has(kind)) as unknown as TokenType[];
    return Object.assign(kind, { LABEL: kind.label, PATTERN: Lexer.NA, CATEGORIES: categories });
  });
  // For the numbers that it gives to kinds and categories.
  new Lexer(theirs, { skipValidations: true, positionTracking: 'onlyOffset' });
  return theirs;
}

const firstsIn = (paths: readonly TokenType[][]): readonly TokenKind[] =>
  paths.flatMap((path) => path.slice(0, 1) as unknown as TokenKind[]);

/** As the reader's own: thrown where a part of the grammar is missing, and so never by the whole. */
export class Mismatch extends Error {}

/** Named as what it takes the place of. */
export abstract class RuleReader extends EmbeddedActionsParser {
  declare private selfAnalysisDone: boolean;
  declare private exportLexerState: () => number;
  declare private importLexerState: (state: number) => void;

  constructor(kinds: readonly TokenKind[]) {
    super(taught(kinds), {
      recoveryEnabled: false,
      maxLookahead: 1,
      skipValidations: true,
      errorMessageProvider: {
        buildMismatchTokenMessage: ({ expected: kind, actual }) => expected((kind as unknown as TokenKind).label, asOurs(actual)),
        buildNoViableAltMessage: ({ expectedPathsPerAlt, actual, customUserDescription }) =>
          expected(customUserDescription ?? oneOf(firstsIn(expectedPathsPerAlt.flat())), asOurs(actual[0])),
        buildEarlyExitMessage: ({ expectedIterationPaths, actual, customUserDescription }) =>
          expected(customUserDescription ?? oneOf(firstsIn(expectedIterationPaths)), asOurs(actual[0])),
        buildNotAllInputParsedMessage: () => '',
      },
    });
  }

  override get input(): IToken[] {
    // Without what Chevrotain puts after the last one.
    return super.input.filter(({ tokenType }) => tokenType !== EOF);
  }

  override set input(tokens: IToken[]) {
    if (!this.selfAnalysisDone) this.performSelfAnalysis();
    for (const token of tokens) {
      const numbered = Object.hasOwn(token, 'tokenTypeIdx');
      if (!numbered) Object.defineProperty(token, 'tokenTypeIdx', { get: (): unknown => token.tokenType.tokenTypeIdx });
    }
    super.input = tokens;
  }

  /** Chevrotain finds it out by itself. */
  protected learn(): void {}

  protected get place(): number {
    return this.exportLexerState() + 1;
  }

  protected go(index: number): void {
    this.importLexerState(index - 1);
  }

  protected override LA(n: number): IToken {
    return asOurs(super.LA(n)) as unknown as IToken;
  }

  protected attempt<T>(read: () => T): Attempt<T> {
    try {
      return { ok: true, value: read() };
    } catch (error) {
      if (!(error instanceof Error) || !isRecognitionException(error)) throw error;
      return { ok: false, error };
    }
  }
}
