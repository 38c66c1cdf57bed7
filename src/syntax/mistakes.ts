/**
 * The words in which the parser tells what went wrong.
 */
import type { Span } from '../base/span.js';
import { diagnose } from '../diagnostics/catalogue-entry.js';
import { syntaxCodes } from '../diagnostics/codes/syntax.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { shown } from './plain-errors.js';
import { endOf, type Token } from './token.js';
import { opensClause } from './tokens.js';

/** Where the item that failed began, where the last good token ended, and whether the next item plainly begins after it. */
export interface FailureContext {
  readonly opener: { readonly word: string; readonly at: Span } | undefined;
  readonly end: Span;
  readonly file: number;
  readonly cutShort: boolean;
}

/** An item that went wrong at `token` (undefined: at the end of the file). */
export function unexpected(error: Error, token: Token | undefined, { opener, cutShort, end, file }: FailureContext): Diagnostic {
  // What is missing is missing where the last good word ended, not where the next clause begins.
  const missing = token === undefined || cutShort;
  return diagnose(syntaxCodes.unexpected, {
    message: cutShort ? error.message.replace(/ here, not (.*)\.$/s, ' here, before $1.') : error.message,
    at: missing ? { ...end, start: end.end } : { file, start: token.startOffset, end: endOf(token) },
    labels: opener === undefined ? [] : [{ at: opener.at, text: 'in what begins here' }],
  });
}

/** Words that begin no item and belong to none. */
export function stray(first: Token, at: Span): Diagnostic {
  if (opensClause(first.image)) {
    return diagnose(syntaxCodes.strayWords, {
      message: `\`${first.image}\` opens a clause, but not one of what is declared here.`,
      at,
      help: 'Most clauses belong to a task: they follow `task`, its name and its title.',
    });
  }
  return diagnose(syntaxCodes.strayWords, {
    message: `${shown(first)} begins no clause or declaration and does not go on with the one before it.`,
    at,
    help: 'Each clause begins with its own word, such as `every`, `with`, `uses` or `reason`.',
  });
}

/** The limit on mistakes is reached. */
export function giveUp(limit: number, at: Span): Diagnostic {
  return diagnose(syntaxCodes.tooMany, { message: `Reading stops here, after ${limit} mistakes.`, at });
}
