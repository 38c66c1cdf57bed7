/**
 * Checking a schedule while its files are edited.
 */
import type { SourceText } from '../base/source-text.js';
import { LiveParser } from '../syntax/live-parser.js';
import type { ParseResult } from '../syntax/parse-on.js';
import type { Checked, CheckOptions } from './check.js';
import { Examiner } from './examiner.js';
import type { Loader } from './load/shelf.js';
import { wholeExamination } from './whole-examination.js';

/**
 * Follows one schedule through any number of changes of its files.
 *
 * INVARIANT: `check` here gives what `check` of check.ts gives. The trees and places of an earlier answer move with the text: once a new answer
 * is asked for, the earlier one is not to be read any more.
 *
 * @example const live = new LiveCheck(); live.check('tarn-55.due', load); // and after each keystroke again
 */
export class LiveCheck {
  private readonly parsers = new Map<string, LiveParser>();
  private readonly opened = new Map<string, number>();
  private readonly examiner = new Examiner((source, index) => this.parse(source, index), wholeExamination);

  /** As `check`. */
  check(path: string, load: Loader, options: CheckOptions = {}): Checked {
    this.opened.clear();
    return this.examiner.examine(path, load, options);
  }

  /** Each place where a file is wanted has a tree of its own, and so a parser of its own. */
  private parse({ name, text }: SourceText, index: number): ParseResult {
    const times = this.opened.get(name) ?? 0;
    this.opened.set(name, times + 1);
    const key = `${times} ${name}`;
    const parser = this.parsers.get(key) ?? new LiveParser();
    this.parsers.set(key, parser);
    return parser.parse(text, index);
  }
}
