/**
 * Recovery: one mistake is told once, and the rest of the file is still read.
 *
 * The text is read as series (declarations in a file, clauses in a task, bands in `reads`, lines and acts in an example), one
 * inside the other. When an item of a series goes wrong, first the one word at which it failed is tried as each word of
 * the language that it resembles; the first that lets the item be read further is told as a misspelling and kept. Otherwise
 * the item is given up and reading resumes where an item of this series, or of one around it, plainly begins.
 *
 * INVARIANT: each round of a series reads or passes over at least one token, or puts a token right for good.
 */
import type { Outcome } from './grammar-base.js';
import { OccasionGrammar } from './grammar-occasions.js';
import { diagnose } from '../diagnostics/catalogue-entry.js';
import { syntaxCodes } from '../diagnostics/codes/syntax.js';
import { giveUp, misspelt, reservedAsName, slipped, stray, unexpected } from './mistakes.js';
import type { Slip } from './slip.js';
import { slipAt } from './slips.js';
import { END_KIND, endOf, retype, type Token, type TokenKind } from './token.js';
import type { TextNode } from './tree.js';
import { DAYS, resembling } from './resembling.js';
import { allWords, isJoining, opensDeclaration } from './tokens.js';
import { reservedWords } from './words.js';

/** A run of items of one sort, and how to tell where one begins. All look at the next tokens. */
export interface Series<T> {
  /** An item begins here, right or wrong. */
  readonly opens: () => boolean;
  /** The series is over. */
  readonly ends: () => boolean;
  /** After a mistake: an item begins here beyond doubt. */
  readonly resumes: () => boolean;
  readonly read: () => T;
  /** What was read from this token on an earlier reading of the same words, and where it ended. */
  readonly recalls?: (start: number) => { readonly value: T; readonly end: number } | undefined;
  /** Told of each item that was read without any mistake in it. */
  keeps?(start: number, end: number, value: T): void;
}

/** How one word was put right. */
interface Mend<T> {
  readonly word: string;
  /** Undefined: it begins an item of a series further out, or the next of this one. */
  readonly outcome?: Outcome<T>;
}

/** How many words before the one at which reading failed may be the misspelt one. */
const LOOK_BACK = 4;

/** Reads series of items, mending and resuming. */
export abstract class RecoveringGrammar extends OccasionGrammar {
  private readonly around: Series<unknown>[] = [];
  /** How many items were given up or passed over so far. */
  protected lost = 0;
  protected mistakeLimit = Number.POSITIVE_INFINITY;
  /** Indices of the tokens that were put right: they are no longer what the author wrote. */
  protected readonly altered = new Set<number>();

  /** Reads a series to its end. While Chevrotain records the grammar, an empty one. */
  protected series<T>(series: Series<T>): readonly T[] {
    if (this.RECORDING_PHASE) return [];
    const outer = this.pending;
    this.around.push(series);
    try {
      return this.items(series);
    } finally {
      this.around.pop();
      this.pending = outer;
    }
  }

  private items<T>(series: Series<T>): T[] {
    const found: T[] = [];
    /** Where the items in `found` begin; forgotten after a mistake, beyond which no item is read again. */
    let starts: number[] = [];
    while (!this.atEnd() && !series.ends() && !this.givenUp()) {
      const start = this.place;
      if (series.opens()) {
        const item = this.item(series, start);
        if (item !== undefined) found.push(item);
        if (item === undefined) starts = [];
        else starts = starts.length === 0 ? [start] : [starts.at(-1) ?? start, start];
      } else {
        const from = this.isSlipOfWord(start) ? undefined : this.mendStray(series, starts);
        if (from === undefined) this.passOver(start);
        else found.length -= starts.filter((each) => each >= from).length;
        starts = [];
      }
    }
    return found;
  }

  /** One item from `start`; undefined if it was given up. */
  protected item<T>(series: Series<T>, start: number): T | undefined {
    const known = series.recalls?.(start);
    if (known !== undefined) {
      this.go(known.end);
      return known.value;
    }
    const before = this.problems.length + this.lost;
    let outcome = this.tryAt(start, series.read);
    if (outcome.ok && this.pending.length === 0 && this.problems.length + this.lost === before)
      series.keeps?.(start, this.place, outcome.value);
    while (!outcome.ok) {
      const slip = this.slipAround(start, outcome.failedAt);
      const better = slip === undefined ? this.mend(series, start, outcome.failedAt) : undefined;
      if (better?.outcome === undefined) {
        if (slip !== undefined) this.problems.push(slipped(slip, this.file, syntaxCodes.unexpected));
        else if (better === undefined)
          this.problems.push(unexpected(outcome.error, this.tokenAt(outcome.failedAt), this.context(start, outcome.failedAt)));
        this.lost += 1;
        this.gaveUp(start);
        this.goPast(slip, Math.max(outcome.failedAt, start + 1));
        return undefined;
      }
      outcome = better.outcome;
    }
    this.settle();
    return outcome.value;
  }

  /** A slip that the words around a failure show. */
  private slipAround(start: number, failedAt: number): Slip | undefined {
    const opener = start < failedAt ? this.tokenAt(start)?.image : undefined;
    return this.givenUp() ? undefined : slipAt((n) => this.tokenAt(failedAt + n), opener);
  }

  /** A word of the language stands where people who write otherwise put it: it is not misspelt. */
  private isSlipOfWord(index: number): boolean {
    const token = this.tokenAt(index);
    return token !== undefined && allWords().includes(token.image) && this.slipAround(index, index) !== undefined;
  }

  /** Called when the item that begins at `start` is given up. */
  protected gaveUp(_start: number): void {
    // Only a layer that keeps account of what is missing has anything to do here.
  }

  /** Tries to put right the word at which an item failed, or one of the few before it. */
  private mend<T>(series: Series<T>, start: number, failedAt: number): Mend<T> | undefined {
    const token = this.tokenAt(failedAt);
    if (this.givenUp()) return undefined;
    if (token !== undefined && this.isReserved(token)) {
      const mend = this.mendReserved(series, start, failedAt, token);
      if (mend !== undefined) return mend;
    }
    for (let index = failedAt; index >= Math.max(start, failedAt - LOOK_BACK); index -= 1) {
      const mend = this.respell(index, (word) => {
        this.go(index);
        if (this.around.some((each) => each.resumes() && (each !== series || index > start))) return { word };
        const outcome = this.tryAt(start, series.read);
        return this.reached(outcome) > failedAt ? { word, outcome } : undefined;
      });
      if (mend === undefined) continue;
      if (mend.outcome === undefined) this.go(index);
      return mend;
    }
    return undefined;
  }

  /** A reserved word stands where a name belongs: read on as if it were one, unless it plainly begins the next item. */
  private mendReserved<T>(series: Series<T>, start: number, failedAt: number, token: Token): Mend<T> | undefined {
    this.go(failedAt);
    const before = this.tokenAt(failedAt - 1);
    const declared = before !== undefined && opensDeclaration(before.image);
    if (isJoining(token.image) && !declared) return undefined;
    const titled = declared && this.tokenAt(failedAt + 1)?.tokenType === this.v.Text;
    if (!titled && this.resumes() && !this.mistaken.has(token.image)) return undefined;
    const kind = token.tokenType;
    retype(token, this.v.Name);
    const outcome = this.tryAt(start, series.read);
    if (this.reached(outcome) <= failedAt + (this.mistaken.has(token.image) ? 0 : 1) && !outcome.ok) {
      retype(token, kind);
      return undefined;
    }
    if (!this.mistaken.has(token.image)) this.problems.push(reservedAsName(token, this.tokenAt(failedAt - 1), this.spanOf(token)));
    this.mistaken.add(token.image);
    this.altered.add(failedAt);
    return { word: token.image, outcome };
  }

  /**
   * A word between two items: the misspelt first word of the next one, or the sign that an item before it holds a misspelt word.
   *
   * @returns from where to read again; undefined if nothing was put right.
   */
  private mendStray<T>(series: Series<T>, starts: readonly number[]): number | undefined {
    const index = this.place;
    const opening = this.respell(index, (word): Mend<T> | undefined => {
      this.go(index);
      if (this.around.some((each) => each !== series && each.resumes())) return { word };
      return series.opens() && this.reached(this.tryAt(index, series.read)) > index + 1 ? { word } : undefined;
    });
    let from = opening === undefined ? undefined : index;
    for (let at = index; from === undefined && at > index - LOOK_BACK; at -= 1) {
      for (const start of starts.filter((each) => each < at || (each === at && at < index))) {
        const mend = this.respell(at, (word): Mend<T> | undefined => (this.readsBeyond(series, start, index) ? { word } : undefined));
        if (mend !== undefined) from = start;
      }
    }
    this.pending = [];
    this.go(from ?? index);
    return from;
  }

  /** True if one or two items from `start` take the token at `index` in. */
  private readsBeyond<T>(series: Series<T>, start: number, index: number): boolean {
    this.go(start);
    for (let round = 0; round < 2 && this.place <= index; round += 1) {
      if (!series.opens() || !this.tryAt(this.place, series.read).ok) return false;
    }
    return this.place > index;
  }

  /** Tries a word as each word of the language it resembles; the first that `accept` takes is told and kept. */
  private respell<T>(index: number, accept: (word: string) => Mend<T> | undefined): Mend<T> | undefined {
    const token = this.tokenAt(index);
    if (token === undefined || !this.isWord(token)) return undefined;
    const before = { kind: token.tokenType, image: token.image, endOffset: token.endOffset };
    const at = this.spanOf(token);
    for (const word of resembling(token.image).slice(0, 8)) {
      token.endOffset = at.end - 1;
      token.image = word;
      retype(token, this.kindOfWord(word));
      const mend = accept(word);
      if (mend !== undefined) {
        this.problems.push(misspelt(before.image, word, at));
        this.altered.add(index);
        return mend;
      }
    }
    token.image = before.image;
    token.endOffset = before.endOffset;
    retype(token, before.kind);
    return undefined;
  }

  private kindOfWord(word: string): TokenKind {
    const words: Readonly<Record<string, TokenKind>> = this.v.word;
    if (word === DAYS) return this.v.DaysWork;
    return words[word] ?? this.v.Month;
  }

  /** Passes over a text whose quotes were forgotten: words on the rest of the line, of any sort if the first has a capital. */
  protected unquoted(): readonly Token[] {
    const words: Token[] = [];
    const capital = /[A-Z]/.test(this.source.charAt(this.LA(1).startOffset)) && !this.atEnd();
    while (!this.atEnd() && (capital ? !this.resumes() : this.sees(1, this.v.Name)) && this.onLineWith(words.at(-1) ?? this.LA(0))) {
      words.push(this.LA(1));
      this.go(this.place + 1);
    }
    if (words.length >= 2 || (capital && words.length === 1)) return words;
    this.go(this.place - words.length);
    return [];
  }

  /** Passes over the words on the rest of the line, up to the next clause; the first of them. None where a word of the language begins them. */
  private restOfLine(): Token | undefined {
    const first = this.LA(1);
    if (this.atEnd() || !this.onLineWith(this.LA(0)) || !this.isWord(first)) return undefined;
    if (this.isReserved(first) && !/[A-Z]/.test(this.source.charAt(first.startOffset))) return undefined;
    do this.go(this.place + 1);
    while (!this.atEnd() && !this.resumes() && this.onLineWith(this.LA(0)));
    return first;
  }

  private onLineWith(before: Token): boolean {
    return !/[\r\n]/.test(this.source.slice(before.startOffset, this.LA(1).startOffset));
  }

  /** Text, after the word that asks for it; words on the rest of its line serve where the quotes were forgotten. */
  protected readonly saying = this.RULE('saying', (): TextNode => {
    const first = this.RECORDING_PHASE || this.sees(1, this.v.Text) ? undefined : this.restOfLine();
    if (first === undefined) return this.textNode(this.CONSUME(this.v.Text));
    const spoken = this.since(first);
    const stop = /^[.!?;]*(?=\s*(?:[\r\n]|$))/.exec(this.source.slice(spoken.end, spoken.end + 8))?.[0] ?? '';
    const at = { ...spoken, end: spoken.end + stop.length };
    const text = this.source.slice(at.start, at.end);
    this.pending.push(
      diagnose(syntaxCodes.titleMissing, {
        message: 'This text stands without quotes.',
        at,
        fixes: [{ grade: 'likely', title: 'Put it in quotes', edits: [{ at, text: `"${text}"` }] }],
      }),
    );
    return { kind: 'text', at, text };
  });

  private isReserved(token: Token): boolean {
    return reservedWords.has(token.image) && token.tokenType !== this.v.Name;
  }

  private isWord(token: Token): boolean {
    return token.tokenType === this.v.Name || this.isReserved(token) || this.v.Name.members.has(token.tokenType);
  }

  private reached(outcome: Outcome<unknown>): number {
    return outcome.ok ? this.place : outcome.failedAt;
  }

  /** Passes over what begins nothing, and says so once. */
  private passOver(start: number): void {
    const first = this.tokenAt(start);
    const slip = this.slipAround(start, start);
    this.lost += 1;
    this.goPast(slip, start + 1);
    const last = this.tokenAt(this.place - 1);
    if (slip !== undefined) this.problems.push(slipped(slip, this.file, syntaxCodes.strayWords));
    else if (first !== undefined && last !== undefined) this.problems.push(stray(first, this.reach(this.spanOf(first), this.spanOf(last))));
  }

  /** Goes on behind a slip, or from `index`: what begins a line there is looked at for its own sake. */
  private goPast(slip: Slip | undefined, index: number): void {
    let next = index;
    if (slip !== undefined) while ((this.tokenAt(next)?.startOffset ?? slip.end) < slip.end) next += 1;
    if (slip === undefined || !this.beginsLine(next)) this.resume(next);
    else {
      this.go(next);
      this.pending = [];
    }
  }

  /** Goes on from `index` to where an item plainly begins. */
  private resume(index: number): void {
    this.go(index);
    this.pending = [];
    while (!this.atEnd() && !this.resumes()) this.go(this.place + 1);
  }

  /** To spread into a node during whose reading something was lost. */
  protected partialSince(lost: number): { readonly partial?: true } {
    return this.lost > lost ? { partial: true } : {};
  }

  /** An item of this series, or of one around it, plainly begins here. */
  protected resumes(): boolean {
    return this.around.some((each) => each.resumes());
  }

  private beginsLine(index: number): boolean {
    const [before, token] = [this.tokenAt(index - 1), this.tokenAt(index)];
    return before !== undefined && token !== undefined && /[\r\n]/.test(this.source.slice(endOf(before), token.startOffset));
  }

  private resumesAt(index: number): boolean {
    this.go(index);
    return !this.atEnd() && this.resumes();
  }

  protected givenUp(): boolean {
    if (this.problems.length < this.mistakeLimit) return false;
    if (this.problems.length === this.mistakeLimit) {
      const token = this.tokenAt(this.place) ?? this.LA(0);
      this.problems.push(giveUp(this.mistakeLimit, this.spanOf(token)));
    }
    return true;
  }

  /** Undefined at the end of the file. */
  protected tokenAt(index: number): Token | undefined {
    const token = this.input[index];
    return token === undefined || token.tokenType === END_KIND ? undefined : token;
  }

  private context(start: number, failedAt: number) {
    const opener = start < failedAt ? this.tokenAt(start) : undefined;
    const before = this.tokenAt(failedAt - 1);
    return {
      opener: opener === undefined ? undefined : { word: opener.image, at: this.spanOf(opener) },
      end: before === undefined ? { file: this.file, start: 0, end: 0 } : this.spanOf(before),
      file: this.file,
      cutShort: this.resumesAt(failedAt) || (start < failedAt && this.beginsLine(failedAt)),
    };
  }
}
