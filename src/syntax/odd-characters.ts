/**
 * Finds characters that nobody can see, or that make a line look different from what it says.
 */
import type { Span } from '../base/span.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { diagnose } from '../diagnostics/catalogue-entry.js';
import { syntaxCodes } from '../diagnostics/codes/syntax.js';

/** Runs of control characters but tab and line ends, of invisible and direction-turning characters, and of halves of surrogate pairs. */
const HIDDEN =
  /(?:[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff])+/g;

/** One diagnostic for each run, `most` at most; a byte order mark at the very start is allowed. */
export function hiddenCharacters(text: string, file: number, most: number): readonly Diagnostic[] {
  const found: Diagnostic[] = [];
  for (const match of text.matchAll(HIDDEN)) {
    if (match.index === 0 && match[0] === '\ufeff') continue;
    if (found.length >= most) break;
    found.push(hidden(match[0], { file, start: match.index, end: match.index + match[0].length }));
  }
  return found;
}

function hidden(run: string, at: Span): Diagnostic {
  const code = `U+${run.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`;
  return diagnose(syntaxCodes.hiddenCharacter, {
    message:
      run.length === 1
        ? `A character that cannot be seen stands here (${code}).`
        : `${run.length} characters that cannot be seen stand here (first ${code}).`,
    at,
    help: 'Delete it, and write the line again if it still looks wrong.',
    fixes: [{ grade: 'likely', title: 'Delete what cannot be seen', edits: [{ at, text: '' }] }],
  });
}
