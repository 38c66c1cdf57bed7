/**
 * The words in which a mistake is told by what was meant.
 */
import type { Span } from '../base/span.js';
import { diagnose, type Code } from '../diagnostics/catalogue-entry.js';
import { syntaxCodes } from '../diagnostics/codes/syntax.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { clauseExample } from './clause-examples.js';
import type { FailureContext } from './mistakes.js';
import type { Slip } from './slip.js';
import type { Token } from './token.js';
import { opensDeclaration } from './tokens.js';
import { reservedWords } from './words.js';

/** A failure at `token` (undefined: at the end of the file), with a right example of what began there. */
export function withExample(told: Diagnostic, token: Token | undefined, { opener, cutShort }: FailureContext): Diagnostic {
  const example = opener === undefined ? undefined : clauseExample(opener.word);
  const here = cutShort ? undefined : token;
  const reserved = here !== undefined && reservedWords.has(here.image) && /a name/.test(told.message);
  const help = [
    ...(reserved ? [`\`${here.image}\` is a word of the language and cannot be a name.`] : []),
    ...(example === undefined ? [] : [`For example: \`${example}\`.`]),
  ].join(' ');
  const fixes = here !== undefined && told.message.startsWith('Expected an interval') ? numberBefore(here, told.at) : [];
  return diagnose(told, { ...told, ...(help === '' ? {} : { help }), fixes });
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
