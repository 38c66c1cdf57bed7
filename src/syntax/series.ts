/**
 * Series: declarations in a file, clauses in a task, bands in `reads`, lines and acts in an example, one inside the other.
 *
 * When an item of a series goes wrong it is given up, and reading resumes where an item of this series, or of one around it, plainly begins: one
 * mistake is told once, and the rest of the file is still read. What was meant is looked for where a layer that knows it is put on top
 * (mending.ts).
 *
 * INVARIANT: each round of a series reads or passes over at least one token, or puts a token right for good.
 */
import type { Outcome } from './grammar-base.js';
import { OccasionGrammar } from './grammar-occasions.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { PartMissing, type Missing } from './grammar-part.js';
import { giveUp, stray, unexpected, type FailureContext } from './mistakes.js';
import { END_KIND, endOf, type Token } from './token.js';
import type { TextNode } from './tree.js';

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

type Failure = Extract<Outcome<unknown>, { readonly ok: false }>;

/** How one word was put right. */
export interface Mend<T> {
  readonly word: string;
  /** Undefined: it begins an item of a series further out, or the next of this one. */
  readonly outcome?: Outcome<T>;
}

/** Reads series of items, and resumes after a mistake. */
export abstract class SeriesGrammar extends OccasionGrammar {
  protected readonly around: Series<unknown>[] = [];
  /** How many items were given up or passed over so far. */
  protected lost = 0;
  protected mistakeLimit = Number.POSITIVE_INFINITY;
  /** Indices of the tokens that were put right: they are no longer what the author wrote. */
  protected readonly altered = new Set<number>();
  /** What was met and is read by a part that this grammar was not given. */
  protected missing: Missing[] = [];

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
        starts = item === undefined ? [] : [...starts.slice(-1), start];
      } else {
        const from = this.mendStray(series, starts);
        if (from === undefined) this.passOver(start);
        else found.length -= starts.filter((each) => each >= from).length;
        starts = [];
      }
    }
    return found;
  }

  /** One item from `start`; undefined if it was given up. */
  private item<T>(series: Series<T>, start: number): T | undefined {
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
      const better: Outcome<T> | undefined = this.failed(series, start, outcome);
      if (better === undefined) return undefined;
      outcome = better;
    }
    this.settle();
    return outcome.value;
  }

  /** Tells of an item that went wrong and goes on; what came of reading it again, if a word of it was put right. */
  private failed<T>(series: Series<T>, start: number, { error, failedAt }: Failure): Outcome<T> | undefined {
    if (error instanceof PartMissing) this.missing.push({ part: error.part, at: this.spanOf(error.token) });
    const mend = error instanceof PartMissing ? undefined : this.mend(series, start, failedAt);
    if (mend?.outcome !== undefined) return mend.outcome;
    this.lost += 1;
    this.gaveUp(start);
    const next = Math.max(failedAt, start + 1);
    if (mend !== undefined || error instanceof PartMissing) this.resume(next);
    else this.tellFailure(error, start, failedAt, next);
    return undefined;
  }

  /** Tells of an item that was given up, and goes on from `next` or behind it. */
  protected tellFailure(error: Error, start: number, failedAt: number, next: number): void {
    this.problems.push(this.toldFailure(error, this.tokenAt(failedAt), this.context(start, failedAt)));
    this.resume(next);
  }

  /** How a failure is told. */
  protected toldFailure(error: Error, token: Token | undefined, context: FailureContext): Diagnostic {
    return unexpected(error, token, context);
  }

  /** Tries to put right what keeps an item from being read. */
  protected mend<T>(_series: Series<T>, _start: number, _failedAt: number): Mend<T> | undefined {
    return undefined;
  }

  /**
   * Tries to put right a word between two items. `starts` are where the items before it begin.
   *
   * @returns from where to read again; undefined if nothing was put right.
   */
  protected mendStray<T>(_series: Series<T>, _starts: readonly number[]): number | undefined {
    return undefined;
  }

  /** Called when the item that begins at `start` is given up. */
  protected gaveUp(_start: number): void {
    // Only a layer that keeps account of what is missing has anything to do here.
  }

  /** Passes over what begins nothing, and says so once. */
  protected passOver(start: number): void {
    const first = this.tokenAt(start);
    this.lost += 1;
    this.resume(start + 1);
    const last = this.tokenAt(this.place - 1);
    if (first !== undefined && last !== undefined) this.problems.push(stray(first, this.reach(this.spanOf(first), this.spanOf(last))));
  }

  /** Goes on from `index` to where an item plainly begins. */
  protected resume(index: number): void {
    this.go(index);
    this.pending = [];
    while (!this.atEnd() && !this.resumes()) this.go(this.place + 1);
  }

  /** Text, after the word that asks for it. */
  protected readonly saying = this.RULE('saying', (): TextNode => {
    const spoken = this.RECORDING_PHASE || this.sees(1, this.v.Text) ? undefined : this.spoken();
    return spoken ?? this.textNode(this.CONSUME(this.v.Text));
  });

  /** A text whose quotes were forgotten. */
  protected spoken(): TextNode | undefined {
    return undefined;
  }

  /** Passes over the words of a title whose quotes were forgotten. */
  protected unquoted(): readonly Token[] {
    return [];
  }

  /** To spread into a node during whose reading something was lost. */
  protected partialSince(lost: number): { readonly partial?: true } {
    return this.lost > lost ? { partial: true } : {};
  }

  /** An item of this series, or of one around it, plainly begins here. */
  protected resumes(): boolean {
    return this.around.some((each) => each.resumes());
  }

  protected beginsLine(index: number): boolean {
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

  private context(start: number, failedAt: number): FailureContext {
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
