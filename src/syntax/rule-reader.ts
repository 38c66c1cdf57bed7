/**
 * Reads the rules of a grammar: takes tokens, chooses among ways, repeats, leaves out. It looks at the next token only; a `GATE` may look further.
 *
 * What is in capitals has the names and the meaning that Chevrotain gives it, of which this is the small part that the grammar uses: tests run
 * the very same grammar on Chevrotain (tests/syntax/on-chevrotain.ts) and compare. Numbers in names tell the choices of one rule apart.
 *
 * INVARIANT: `choices` are those of the rule being read. A rule that fails leaves its own behind; {@link RuleReader.attempt} puts them right.
 */
import { type ChoiceTable, RuleChoices } from './lookahead.js';
import { expected, oneOf } from './plain-errors.js';
import { END_KIND, isOfKind, type Token, type TokenKind } from './token.js';

/** One way to go: read by `ALT` if the next token can begin it and its gate, where it has one, is open. */
export interface Way<T> {
  readonly GATE?: () => boolean;
  readonly ALT: () => T;
}

/** Ways to go, and what to say was expected where none can be gone. */
export interface Ways<T> {
  readonly DEF: readonly Way<T>[];
  readonly ERR_MSG?: string;
}

/** What may be left out or repeated. */
export interface Part<T> {
  readonly GATE?: () => boolean;
  readonly DEF: () => T;
  readonly ERR_MSG?: string;
}

/** Items with a separator between them. */
export interface Separated {
  readonly SEP: TokenKind;
  readonly DEF: () => unknown;
  readonly ERR_MSG?: string;
}

/** What a rule is given besides the text. */
interface Given<A extends readonly unknown[]> {
  readonly ARGS: A;
}

/** What came of reading something. */
export type Attempt<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: Error };

/** The text cannot be read by the rule. */
export class Mismatch extends Error {}

const END: Token = { image: '', startOffset: Number.NaN, endOffset: Number.NaN, tokenType: END_KIND };

/** The part of a parser that knows no grammar. */
export abstract class RuleReader {
  /** Chevrotain runs each rule once without a text, to see what it is made of. This reader never does. */
  protected readonly RECORDING_PHASE: boolean = false;
  private tokens: Token[] = [];
  private next = 0;
  private readonly kinds: ReadonlyMap<string, TokenKind>;
  private readonly table: Record<string, string> = {};
  private choices: RuleChoices;

  constructor(kinds: readonly TokenKind[]) {
    this.kinds = new Map(kinds.map((kind) => [kind.name, kind]));
    this.choices = new RuleChoices('', this.kinds, this.table);
  }

  /** Takes in what the choices of some rules begin with: whoever adds rules says so. */
  protected learn(table: ChoiceTable): void {
    Object.assign(this.table, table);
  }

  protected get input(): Token[] {
    return this.tokens;
  }

  protected set input(tokens: Token[]) {
    this.tokens = tokens;
    this.next = 0;
  }

  /** Index of the next token. */
  protected get place(): number {
    return this.next;
  }

  /** Goes to a token by its index. */
  protected go(index: number): void {
    this.next = index;
  }

  /** The n-th token from here: 1 is the next, 0 the last one read. */
  protected LA(n: number): Token {
    return this.tokens[this.next + n - 1] ?? END;
  }

  /** Reads something, or says why it cannot be read; the place is then where reading failed. */
  protected attempt<T>(read: () => T): Attempt<T> {
    const { choices } = this;
    try {
      return { ok: true, value: read() };
    } catch (error) {
      if (!(error instanceof Mismatch)) throw error;
      this.choices = choices;
      return { ok: false, error };
    }
  }

  protected RULE<A extends readonly unknown[], T>(name: string, read: (...args: A) => T): (...args: A) => T {
    const own = new RuleChoices(name, this.kinds, this.table);
    return (...args) => {
      const outer = this.choices;
      this.choices = own;
      const value = read(...args);
      this.choices = outer;
      return value;
    };
  }

  protected SUBRULE<T>(rule: () => T): T;
  protected SUBRULE<A extends readonly unknown[], T>(rule: (...args: A) => T, given: Given<A>): T;
  protected SUBRULE(rule: (...args: readonly unknown[]) => unknown, given?: Given<readonly unknown[]>): unknown {
    return given === undefined ? rule() : rule(...given.ARGS);
  }

  protected CONSUME(kind: TokenKind): Token {
    const token = this.LA(1);
    if (!isOfKind(token, kind)) return this.mismatch(kind.label);
    this.next += 1;
    return token;
  }

  protected OR<T>(ways: readonly Way<T>[] | Ways<T>): T {
    const all = 'DEF' in ways ? ways.DEF : ways;
    const choice = this.choices.choice('OR', 0);
    for (const place of choice.waysBefore(this.LA(1))) {
      const way = all[place];
      if (way !== undefined && way.GATE?.() !== false) return way.ALT();
    }
    return this.mismatch(('DEF' in ways ? ways.ERR_MSG : undefined) ?? oneOf(choice.firsts.flat()));
  }

  protected OPTION<T>(part: (() => T) | Part<T>, number = 0): T | undefined {
    if (!this.choices.choice('OPTION', number).beginsWith(this.LA(1))) return undefined;
    if (typeof part === 'function') return part();
    return part.GATE?.() === false ? undefined : part.DEF();
  }

  protected OPTION1<T>(part: (() => T) | Part<T>): T | undefined {
    return this.OPTION(part, 1);
  }

  protected OPTION2<T>(part: (() => T) | Part<T>): T | undefined {
    return this.OPTION(part, 2);
  }

  protected OPTION3<T>(part: (() => T) | Part<T>): T | undefined {
    return this.OPTION(part, 3);
  }

  protected OPTION4<T>(part: (() => T) | Part<T>): T | undefined {
    return this.OPTION(part, 4);
  }

  protected MANY(part: (() => unknown) | Part<unknown>): void {
    const { DEF, GATE } = typeof part === 'function' ? { DEF: part } : part;
    const choice = this.choices.choice('MANY', 0);
    while (choice.beginsWith(this.LA(1)) && GATE?.() !== false) DEF();
  }

  protected AT_LEAST_ONE_SEP({ SEP, DEF, ERR_MSG }: Separated): void {
    const choice = this.choices.choice('AT_LEAST_ONE_SEP', 0);
    if (!choice.beginsWith(this.LA(1))) this.mismatch(ERR_MSG ?? oneOf(choice.firsts.flat()));
    DEF();
    while (isOfKind(this.LA(1), SEP)) {
      this.next += 1;
      DEF();
    }
  }

  private mismatch(what: string): never {
    throw new Mismatch(expected(what, this.LA(1)));
  }
}
