/**
 * What every layer of the grammar stands on: tokens by place, nodes with spans, and recovery.
 *
 * The grammar is one Chevrotain parser in layers, each a class that extends the one before: quantities, conditions, plans, recovery,
 * readings, clauses, titles, timing, tasks, access, machine, examples, files. Recovery is our own (recovery.ts explains it):
 * Chevrotain's would stop at any word that may follow, and here nearly every clause word also stands inside some other clause.
 */
import { EarlyExitException, EmbeddedActionsParser, EOF, isRecognitionException, NoViableAltException, tokenMatcher, type IToken, type TokenType } from 'chevrotain'; // prettier-ignore
import { cover, type Span } from '../base/span.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { choiceName, chooseAlternative, chooseOption, isBetweenAlternatives, readFirsts, type Chooser, type Firsts } from './lookahead.js';
import { lookaheadTable } from './lookahead-table.js';
import { PlainErrors } from './plain-errors.js';
import { endOf } from './token-edit.js';
import type { Vocabulary } from './tokens.js';
import type { NameNode, NumberNode, TextNode } from './tree.js';

/** What one try at a clause came to; `failedAt` is the index of the token at which it went wrong. */
export type Outcome<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly failedAt: number; readonly error: Error };

/** How Chevrotain numbers what has to stand at least once, without and with a separator: for errors, and in the keys of choices. */
const EARLY_EXIT_SORTS: Readonly<Record<number, number>> = { 2: 4 << 8, 3: 6 << 8 };

// While Chevrotain records the grammar, rules run with placeholders for tokens and without their arguments.
const NOWHERE: Span = { file: 0, start: 0, end: 0 };

/** A quoted text's meaning: `\"` and `\\` stand for a quote and a backslash. */
function unquote(image: string): string {
  const inner = image.slice(1, -1);
  return inner.includes('\\') ? inner.replace(/\\(["\\])/g, '$1') : inner;
}

/** The part of the grammar that reads no grammar. */
export abstract class GrammarBase extends EmbeddedActionsParser {
  protected readonly v: Vocabulary;
  protected file = 0;
  protected source = '';
  /** Reported for good. */
  protected problems: Diagnostic[] = [];
  /** Reported by the clause being read; dropped if the clause is read again. */
  protected pending: Diagnostic[] = [];
  /** Reserved words that the author uses as names in spite of it: told once, then read as names. */
  protected readonly mistaken = new Set<string>();
  declare protected readonly exportLexerState: () => number;
  declare protected readonly importLexerState: (state: number) => void;
  // Parts of Chevrotain that its types leave out.
  declare protected selfAnalysisDone: boolean;
  declare private readonly tokensMap: Readonly<Record<string, TokenType>>;
  declare private readonly shortRuleNameToFull: Readonly<Record<number, string>>;
  declare private readonly getKeyForAutomaticLookahead: (sort: number, occurrence: number) => number;
  declare readonly LA_FAST: (ahead: number) => IToken;
  private readonly choosers = new Map<number, Chooser>();
  private readonly errorMessages = new PlainErrors();

  constructor(vocabulary: Vocabulary) {
    super([...vocabulary.all], {
      recoveryEnabled: false,
      maxLookahead: 1,
      skipValidations: true,
      errorMessageProvider: new PlainErrors(),
    });
    this.v = vocabulary;
  }

  /** Takes the place of Chevrotain's table of choices: each is made ready when it is first met. */
  getLaFuncFromCache(key: number): Chooser {
    let chooser = this.choosers.get(key);
    if (chooser === undefined) {
      const next = (): IToken => this.LA_FAST(1);
      const firsts = this.firstsOf(key);
      chooser = isBetweenAlternatives(key) ? chooseAlternative(firsts, next) : chooseOption(firsts, next);
      this.choosers.set(key, chooser);
    }
    return chooser;
  }

  /** Takes the place of Chevrotain's own, which needs a recorded grammar. */
  raiseNoAltException(occurrence: number, described?: string): never {
    const paths = this.firstsOf(this.getKeyForAutomaticLookahead(1 << 8, occurrence)).map((kinds) => kinds.map((kind) => [kind]));
    const said = described === undefined ? {} : { customUserDescription: described };
    const message = this.errorMessages.buildNoViableAltMessage({ expectedPathsPerAlt: paths, actual: [this.LA(1)], ...said });
    throw new NoViableAltException(message, this.LA(1), this.LA(0));
  }

  /** As {@link raiseNoAltException}, where nothing stands that has to stand at least once. */
  raiseEarlyExitException(occurrence: number, sort: number, described?: string): never {
    const key = this.getKeyForAutomaticLookahead(EARLY_EXIT_SORTS[sort] ?? 0, occurrence);
    const paths = this.firstsOf(key).flatMap((kinds) => kinds.map((kind) => [kind]));
    const said = described === undefined ? {} : { customUserDescription: described };
    const message = this.errorMessages.buildEarlyExitMessage({ expectedIterationPaths: paths, actual: [this.LA(1)], ...said });
    throw new EarlyExitException(message, this.LA(1), this.LA(0));
  }

  private firstsOf(key: number): Firsts {
    const name = choiceName(key, (short) => this.shortRuleNameToFull[short]);
    return readFirsts(lookaheadTable[name] ?? '', this.tokensMap);
  }

  /** Index of the next token. */
  protected get place(): number {
    return this.exportLexerState() + 1;
  }

  /** Goes to a token by its index. */
  protected go(index: number): void {
    this.importLexerState(index - 1);
  }

  /** True if the n-th token from here is of one of these very kinds. */
  protected sees(n: number, ...kinds: readonly TokenType[]): boolean {
    return kinds.includes(this.LA(n).tokenType);
  }

  /** As {@link sees}, but a soft word counts as a name and a name as a unit. */
  protected seesA(n: number, kind: TokenType): boolean {
    return tokenMatcher(this.LA(n), kind);
  }

  protected atEnd(): boolean {
    return this.LA(1).tokenType === EOF;
  }

  protected spanOf(token: IToken): Span {
    if (this.RECORDING_PHASE) return NOWHERE;
    return { file: this.file, start: token.startOffset, end: endOf(token) };
  }

  /** From a token to the last one read. */
  protected since(first: IToken): Span {
    if (this.RECORDING_PHASE) return NOWHERE;
    return { file: this.file, start: first.startOffset, end: endOf(this.LA(0)) };
  }

  protected nameNode(token: IToken): NameNode {
    return { kind: 'name', at: this.spanOf(token), text: token.image };
  }

  protected textNode(token: IToken): TextNode {
    return { kind: 'text', at: this.spanOf(token), text: unquote(token.image) };
  }

  protected numberNode(token: IToken): NumberNode {
    return { kind: 'number', at: this.spanOf(token), text: token.image, value: Number(token.image) };
  }

  /** Tries to read something from the token at `start`. */
  protected tryAt<T>(start: number, read: () => T): Outcome<T> {
    this.go(start);
    this.pending = [];
    try {
      return { ok: true, value: read() };
    } catch (error) {
      if (!(error instanceof Error) || !isRecognitionException(error)) throw error;
      return { ok: false, failedAt: this.place, error };
    }
  }

  protected settle(): void {
    this.problems.push(...this.pending);
    this.pending = [];
  }

  protected reach(from: Span, to: Span): Span {
    if (this.RECORDING_PHASE) return NOWHERE;
    return cover(from, to);
  }
}
