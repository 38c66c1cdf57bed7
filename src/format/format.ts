/**
 * The door to this folder: a schedule's text laid out in the one way that there is (docs/formatting.md).
 */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { hasErrors } from '../diagnostics/collect.js';
import { parseWithTokens } from '../syntax/parse.js';
import type { ParseOptions } from '../syntax/parse-on.js';
import { asWritten, readWords } from '../syntax/read-tokens.js';
import { breaksOf } from './breaks.js';
import { linesOf } from './lines.js';
import { pageOf } from './page.js';
import { type ReadText, sameMeaning, sameWords, wordsOf } from './same-meaning.js';

/** The text laid out, or why it cannot be read. */
export type Formatted = { readonly text: string } | { readonly diagnostics: readonly Diagnostic[] };

/**
 * Lays a text out. Only white space changes: every word, number and comment stays, in its order and at its place.
 *
 * Idempotent: `format` of what it printed gives the same text. A text with a mistake of grammar is left alone and its diagnostics come
 * back instead.
 *
 * @throws Error if what it would print did not mean the same, which would be our own mistake: nothing is printed then.
 * @example format('schedule pump "Pump" language 1').text // 'schedule pump "Pump"\n  language 1\n'
 */
export function format(text: string, options: ParseOptions = {}): Formatted {
  const { file, diagnostics, tokens: read } = parseWithTokens(text, 0, options);
  if (file === null || hasErrors(diagnostics)) return { diagnostics };
  const tokens = asWritten(read, text);
  const printed = pageOf(linesOf(text, tokens, file.comments, breaksOf(file, tokens)));
  if (printed !== text && !isProven({ file, tokens }, printed, diagnostics.length))
    throw new Error('the layout would have changed what the schedule says; nothing was printed');
  return { text: printed };
}

/**
 * Whether what was printed reads as what stood there, and nothing more is said of it. Where nothing was told of a text the grammar has looked at its words
 * and signs alone, so these are enough: line ends and capitals count only where there is something to put right.
 */
function isProven(before: ReadText, printed: string, told: number): boolean {
  if (told === 0) return sameWords(wordsOf(before), readWords(printed));
  const { file, diagnostics, tokens } = parseWithTokens(printed);
  return file !== null && diagnostics.length <= told && sameMeaning(before, { file, tokens: asWritten(tokens, printed) });
}
