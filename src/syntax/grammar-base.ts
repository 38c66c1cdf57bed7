/**
 * What every layer of the grammar stands on: tokens by place, nodes with spans, and recovery.
 *
 * The grammar is one parser in layers, each a class that extends the one before: quantities, plans, occasions, series, clauses, titles,
 * timing, tasks, machine, files; and on top those that a parser may be made without: conditions, readings, defects, access, examples, mending. What reads its rules is
 * rule-reader.ts; series.ts goes on after a mistake.
 */
import { cover, type Span } from '../base/span.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { PartMissing, type GrammarPart } from './grammar-part.js';
import { choices } from './lookahead-table.js';
import { RuleReader } from './rule-reader.js';
import { END_KIND, endOf, isOfKind, type Token, type TokenKind } from './token.js';
import type { Vocabulary } from './tokens.js';
import type { DateNode, NameNode, NumberNode, TextNode } from './tree.js';

/** What one try at a clause came to; `failedAt` is the index of the token at which it went wrong. */
export type Outcome<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly failedAt: number; readonly error: Error };

// While Chevrotain records the grammar, rules run with placeholders for tokens and without their arguments.
const NOWHERE: Span = { file: 0, start: 0, end: 0 };

/** A quoted text's meaning: `\"` and `\\` stand for a quote and a backslash. */
function unquote(image: string): string {
  const inner = image.slice(1, -1);
  return inner.includes('\\') ? inner.replace(/\\(["\\])/g, '$1') : inner;
}

/** The part of the grammar that reads no grammar. */
export abstract class GrammarBase extends RuleReader {
  protected readonly v: Vocabulary;
  protected file = 0;
  protected source = '';
  /** Reported for good. */
  protected problems: Diagnostic[] = [];
  /** Reported by the clause being read; dropped if the clause is read again. */
  protected pending: Diagnostic[] = [];
  /** Reserved words that the author uses as names in spite of it: told once, then read as names. */
  protected readonly mistaken = new Set<string>();

  constructor(vocabulary: Vocabulary) {
    super(vocabulary.all);
    this.v = vocabulary;
    this.learn(choices);
  }

  /** True if the n-th token from here is of one of these very kinds. */
  protected sees(n: number, ...kinds: readonly TokenKind[]): boolean {
    return kinds.includes(this.LA(n).tokenType);
  }

  /** As {@link sees}, but a soft word counts as a name and a name as a unit. */
  protected seesA(n: number, kind: TokenKind): boolean {
    return isOfKind(this.LA(n), kind);
  }

  protected atEnd(): boolean {
    return this.LA(1).tokenType === END_KIND;
  }

  protected spanOf(token: Token): Span {
    if (this.RECORDING_PHASE) return NOWHERE;
    return { file: this.file, start: token.startOffset, end: endOf(token) };
  }

  /** From a token to the last one read. */
  protected since(first: Token): Span {
    if (this.RECORDING_PHASE) return NOWHERE;
    return { file: this.file, start: first.startOffset, end: endOf(this.LA(0)) };
  }

  protected nameNode(token: Token): NameNode {
    return { kind: 'name', at: this.spanOf(token), text: token.image };
  }

  protected dateNode(token: Token): DateNode {
    return { kind: 'date', at: this.spanOf(token), text: token.image };
  }

  protected textNode(token: Token): TextNode {
    return { kind: 'text', at: this.spanOf(token), text: unquote(token.image) };
  }

  protected numberNode(token: Token): NumberNode {
    return { kind: 'number', at: this.spanOf(token), text: token.image, value: Number(token.image) };
  }

  /** Tries to read something from the token at `start`. */
  protected tryAt<T>(start: number, reading: () => T): Outcome<T> {
    this.go(start);
    this.pending = [];
    const read = this.attempt(reading);
    return read.ok ? read : { ok: false, failedAt: this.place, error: read.error };
  }

  /** A rule that reads nothing, but says what it takes to read this. */
  protected without(part: GrammarPart): () => never {
    return () => {
      throw new PartMissing(part, this.LA(1));
    };
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
