/**
 * What was meant: the layer of the grammar that looks for it where an item of a series went wrong.
 *
 * First the words around the failure are held against the slips that many make. Then the one word at which reading failed is tried as each word of the
 * language that it resembles; the first that lets the item be read further is told as a misspelling and kept.
 *
 * Law: it only explains a mistake that is there already. What can be read without it is read the same with it.
 */
import { diagnose } from '../diagnostics/catalogue-entry.js';
import { syntaxCodes } from '../diagnostics/codes/syntax.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { Outcome } from './grammar-base.js';
import type { GrammarLayer } from './grammar-part.js';
import type { FailureContext } from './mistakes.js';
import { DAYS, resembling } from './resembling.js';
import type { Mend, Series } from './series.js';
import type { Slip } from './slip.js';
import { slipAt } from './slips.js';
import { retype, type Token, type TokenKind } from './token.js';
import { allWords, isJoining, opensDeclaration } from './tokens.js';
import type { TextNode } from './tree.js';
import { misspelt, reservedAsName, slipped, withExample } from './what-was-meant.js';
import { reservedWords } from './words.js';

/** How many words before the one at which reading failed may be the misspelt one. */
const LOOK_BACK = 4;

/** Puts right the words that were meant, and tells slips by what was meant. */
export const mending: GrammarLayer = (below) =>
  class MendingGrammar extends below {
    protected override tellFailure(error: Error, start: number, failedAt: number, next: number): void {
      const slip = this.slipAround(start, failedAt);
      if (slip === undefined) super.tellFailure(error, start, failedAt, next);
      else {
        this.problems.push(slipped(slip, this.file, syntaxCodes.unexpected));
        this.goPast(slip, next);
      }
    }

    protected override toldFailure(error: Error, token: Token | undefined, context: FailureContext): Diagnostic {
      return withExample(super.toldFailure(error, token, context), token, context);
    }

    protected override passOver(start: number): void {
      const slip = this.slipAround(start, start);
      if (slip === undefined) super.passOver(start);
      else {
        this.lost += 1;
        this.goPast(slip, start + 1);
        this.problems.push(slipped(slip, this.file, syntaxCodes.strayWords));
      }
    }

    /** Goes on behind a slip, or from `index`: what begins a line there is looked at for its own sake. */
    private goPast(slip: Slip, index: number): void {
      let next = index;
      while ((this.tokenAt(next)?.startOffset ?? slip.end) < slip.end) next += 1;
      this.resume(next);
      if (this.beginsLine(next)) this.go(next);
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

    /** Tries to put right the word at which an item failed, or one of the few before it. */
    protected override mend<T>(series: Series<T>, start: number, failedAt: number): Mend<T> | undefined {
      const token = this.tokenAt(failedAt);
      if (this.givenUp() || this.slipAround(start, failedAt) !== undefined) return undefined;
      if (token !== undefined && this.isReserved(token)) {
        const mend = this.mendReserved(series, start, failedAt, token);
        if (mend !== undefined) return mend;
      }
      for (let index = failedAt; index >= Math.max(start, failedAt - LOOK_BACK); index -= 1) {
        if (index === failedAt && index > start && this.beginsNext(series, index)) continue;
        const mend = this.respell(index, (word, isKnown) => {
          const outcome = this.tryAt(start, series.read);
          if (isKnown ? this.readsWhole(outcome, failedAt) : this.reached(outcome) > failedAt) return { word, outcome };
          this.go(index);
          const opensNext = !isKnown && this.around.some((each) => each.resumes() && (each !== series || index > start));
          return opensNext ? { word } : undefined;
        });
        if (mend === undefined) continue;
        if (mend.outcome === undefined) this.go(index);
        return mend;
      }
      return undefined;
    }

    /** The next item begins with a word of the language, or on a line of its own: what it follows was left unfinished, and the word itself is right. */
    private beginsNext<T>(series: Series<T>, index: number): boolean {
      const token = this.tokenAt(index);
      this.go(index);
      if (token === undefined) return false;
      return this.isReserved(token) ? this.resumes() : this.beginsLine(index) && series.opens();
    }

    /** A reserved word stands where a thing is declared, or stood there before: read on as if it were a name. */
    private mendReserved<T>(series: Series<T>, start: number, failedAt: number, token: Token): Mend<T> | undefined {
      const again = this.mistaken.has(token.image);
      if (!again && !this.isDeclaredAs(start, failedAt, token)) return undefined;
      const kind = token.tokenType;
      retype(token, this.v.Name);
      const outcome = this.tryAt(start, series.read);
      if (!outcome.ok && this.reached(outcome) <= failedAt + (again ? 0 : 1)) {
        retype(token, kind);
        return undefined;
      }
      if (!again) this.problems.push(reservedAsName(token, this.tokenAt(failedAt - 1), this.spanOf(token)));
      this.mistaken.add(token.image);
      this.altered.add(failedAt);
      return { word: token.image, outcome };
    }

    /**
     * A declaration has this reserved word for a name, as its own or in a list. Elsewhere a name was more likely left out, and the word goes on with what
     * comes behind it.
     */
    private isDeclaredAs(start: number, index: number, token: Token): boolean {
      const [opener, before] = [this.tokenAt(start), this.tokenAt(index - 1)];
      this.go(index);
      if (before !== undefined && opensDeclaration(before.image))
        return this.tokenAt(index + 1)?.tokenType === this.v.Text || !this.resumes();
      const inDeclaration = opener !== undefined && opensDeclaration(opener.image);
      return inDeclaration && !isJoining(token.image) && !this.beginsLine(index) && !this.resumes();
    }

    /**
     * A word between two items: the misspelt first word of the next one, or the sign that an item before it holds a misspelt word.
     *
     * @returns from where to read again; undefined if nothing was put right.
     */
    protected override mendStray<T>(series: Series<T>, starts: readonly number[]): number | undefined {
      const index = this.place;
      if (this.isSlipOfWord(index)) return undefined;
      const opening = this.respell(index, (word, isKnown): Mend<T> | undefined => {
        this.go(index);
        if (!isKnown && this.around.some((each) => each !== series && each.resumes())) return { word };
        if (!series.opens()) return undefined;
        const outcome = this.tryAt(index, series.read);
        return (isKnown ? this.readsWhole(outcome, index) : this.reached(outcome) > index + 1) ? { word } : undefined;
      });
      let from = opening === undefined ? undefined : index;
      for (let at = index; from === undefined && at > index - LOOK_BACK; at -= 1) {
        for (const start of starts.filter((each) => each < at || (each === at && at < index))) {
          const mend = this.respell(at, (word, isKnown): Mend<T> | undefined =>
            !isKnown && this.readsBeyond(series, start, index) ? { word } : undefined,
          );
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

    /** An item was read beyond `index`, and what follows it plainly begins another: what a word of the language must come to, to be taken for a slip. */
    private readsWhole(outcome: Outcome<unknown>, index: number): boolean {
      return outcome.ok && this.pending.length === 0 && this.place > index && (this.atEnd() || this.resumes());
    }

    /**
     * Tries a word as each word of the language it resembles; the first that `accept` takes is told and kept. `accept` is told whether what was written is
     * a word of the language itself.
     */
    private respell<T>(index: number, accept: (word: string, isKnown: boolean) => Mend<T> | undefined): Mend<T> | undefined {
      const token = this.tokenAt(index);
      if (token === undefined || !this.isWord(token) || this.altered.has(index)) return undefined;
      const isKnown = token.tokenType !== this.v.Name;
      const before = { kind: token.tokenType, image: token.image, endOffset: token.endOffset };
      const [told, lost] = [this.problems.length, this.lost];
      const at = this.spanOf(token);
      for (const word of resembling(token.image).slice(0, 8)) {
        token.endOffset = at.end - 1;
        token.image = word;
        retype(token, this.kindOfWord(word));
        const mend = accept(word, isKnown);
        if (mend === undefined || (isKnown && this.problems.length > told)) {
          // What was told on this reading was told of words that nobody wrote.
          this.problems.length = told;
          this.lost = lost;
        } else {
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
    protected override unquoted(): readonly Token[] {
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

    /** Words on the rest of the line serve where the quotes were forgotten. */
    protected override spoken(): TextNode | undefined {
      const first = this.restOfLine();
      if (first === undefined) return undefined;
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
    }

    private isReserved(token: Token): boolean {
      return reservedWords.has(token.image) && token.tokenType !== this.v.Name;
    }

    private isWord(token: Token): boolean {
      return token.tokenType === this.v.Name || this.isReserved(token) || this.v.Name.members.has(token.tokenType);
    }

    private reached(outcome: Outcome<unknown>): number {
      return outcome.ok ? this.place : outcome.failedAt;
    }
  };
