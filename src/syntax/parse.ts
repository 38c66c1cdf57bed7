/**
 * The door to this folder: text in, tree and diagnostics out.
 */
import type { Lexed } from './lex.js';
import { parseOn, type ParseOptions, type ParseResult } from './parse-on.js';
import { machinery } from './whole-machinery.js';

/**
 * Parses the text of one file. A mistake of the author's is a diagnostic, never an exception, and what could be read is in
 * the tree all the same.
 *
 * @param file index of the file in the compilation's list of sources; all spans carry it.
 * @example parse('schedule pump "Irrigation pump" language 1').file?.header.name.text // "pump"
 */
export function parse(text: string, file = 0, options: ParseOptions = {}): ParseResult {
  const { file: tree, diagnostics } = parseWithTokens(text, file, options);
  return { file: tree, diagnostics };
}

/** As {@link parse}, with the tokens that it read; none of a text that was refused unread. */
export function parseWithTokens(text: string, file = 0, options: ParseOptions = {}): ParseResult & Pick<Lexed, 'tokens'> {
  return parseOn(machinery(), text, file, options);
}
