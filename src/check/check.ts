/**
 * The door of this folder: a schedule's files, checked.
 */
import type { SourceText } from '../base/source-text.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { parse } from '../syntax/parse.js';
import { Examiner } from './examiner.js';
import type { Limits } from './load/limits.js';
import type { Loader } from './load/shelf.js';
import type { Model } from './model.js';
import { wholeExamination } from './whole-examination.js';

/** What `check` may be given besides the file and its loader. */
export interface CheckOptions {
  /** Bounds on what a schedule may ask for; those left out keep their defaults (8 deep, 32 files, 5,000 rules, 100 mistakes told). */
  readonly limits?: Partial<Limits>;
}

/** The answer of `check`: the model of the schedule, as far as it could be made, and what is wrong. */
export interface Checked {
  /** Null where the file that was asked for cannot be read as a schedule at all. */
  readonly model: Model | null;
  /** By place, without repeats. */
  readonly diagnostics: readonly Diagnostic[];
  /** The files, in the order in which they were opened; spans say which by index. */
  readonly sources: readonly SourceText[];
}

/**
 * Reads a schedule and all that it is made of, and says everything that is wrong with it.
 *
 * Pure: files come from `load`, which is asked only for `path` and for paths below the folders of the files that name them.
 *
 * @example check('tarn-55.due', (path) => files.get(path)).diagnostics
 */
export function check(path: string, load: Loader, options: CheckOptions = {}): Checked {
  return new Examiner((source, index) => parse(source.text, index), wholeExamination).examine(path, load, options);
}
