/**
 * The words in which the parser tells what went wrong.
 */
import type { Span } from '../base/span.js';
import { diagnose, type Code } from '../diagnostics/catalogue-entry.js';
import { syntaxCodes } from '../diagnostics/codes/syntax.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { clauseExample } from './clause-examples.js';
import { shown } from './plain-errors.js';
import type { Slip } from './slip.js';
import { endOf, type Token } from './token.js';
import { opensClause, opensDeclaration } from './tokens.js';
import { reservedWords } from './words.js';

/** Where the item that failed began, where the last good token ended, and whether the next item plainly begins after it. */
export interface FailureContext {
  readonly opener: { readonly word: string; readonly at: Span } | undefined;
  readonly end: Span;
  readonly file: number;
  readonly cutShort: boolean;
}

/** An item that went wrong at `token` (undefined: at the end of the file). */
export function unexpected(error: Error, token: Token | undefined, context: FailureContext): Diagnostic {
  const { opener, cutShort } = context;
  // What is missing is missing where the last good word ended, not where the next clause begins.
  const missing = token === undefined || cutShort;
  const at = missing ? { ...context.end, start: context.end.end } : { file: context.file, start: token.startOffset, end: endOf(token) };
  const message = cutShort ? error.message.replace(/ here, not (.*)\.$/s, ' here, before $1.') : error.message;
  const example = opener === undefined ? undefined : clauseExample(opener.word);
  const reserved = !missing && reservedWords.has(token.image) && /a name/.test(error.message);
  const help = [
    ...(reserved ? [`\`${token.image}\` is a word of the language and cannot be a name.`] : []),
    ...(example === undefined ? [] : [`For example: \`${example}\`.`]),
  ].join(' ');
  return diagnose(syntaxCodes.unexpected, {
    message,
    at,
    labels: opener === undefined ? [] : [{ at: opener.at, text: 'in what begins here' }],
    ...(help === '' ? {} : { help }),
    fixes: !missing && error.message.startsWith('Expected an interval') ? numberBefore(token, at) : [],
  });
}

/** `every month` says no number: one is meant. */
function numberBefore(token: Token, at: Span): Diagnostic['fixes'] {
  if (!/^(?:day|week|month|year|h)$/.test(token.image)) return [];
  return [{ grade: 'likely', title: `Write \`1 ${token.image}\``, edits: [{ at: { ...at, end: at.start }, text: '1 ' }] }];
}

/** A slip that many make, told by what was meant. */
export function slipped({ message, help, start, end, fix }: Slip, file: number, entry: Code): Diagnostic {
  const at = { file, start, end };
  const fixes = fix === undefined ? [] : [{ grade: fix.grade, title: fix.title, edits: [{ at, text: fix.text }] }];
  return diagnose(entry, { message, at, ...(help === undefined ? {} : { help }), fixes });
}

/** A word that was read as one of the language. */
export function misspelt(written: string, word: string, at: Span): Diagnostic {
  return diagnose(syntaxCodes.misspelt, {
    message: `\`${written}\` is not a word that fits here, but \`${word}\` is.`,
    at,
    fixes: [
      {
        grade: Math.abs(written.length - word.length) <= 1 && written.length > 3 ? 'sure' : 'likely',
        title: `Write \`${word}\``,
        edits: [{ at, text: word }],
      },
    ],
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

/** A reserved word in the place of a name. `before` is the word that asked for the name. */
export function reservedAsName(token: Token, before: Token | undefined, at: Span): Diagnostic {
  const better = before !== undefined && opensDeclaration(before.image) ? `${token.image}-${before.image}` : `the-${token.image}`;
  return diagnose(syntaxCodes.reservedName, {
    message: `\`${token.image}\` is a word of the language and cannot be a name.`,
    at,
    help: `Call it \`${better}\`, for example, here and wherever it is used.`,
    fixes: [{ grade: 'possible', title: `Call it \`${better}\``, edits: [{ at, text: better }] }],
  });
}

/** The limit on mistakes is reached. */
export function giveUp(limit: number, at: Span): Diagnostic {
  return diagnose(syntaxCodes.tooMany, { message: `Reading stops here, after ${limit} mistakes.`, at });
}
