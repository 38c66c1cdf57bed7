/**
 * Where a text can be cut so that its pieces have the tokens of the whole.
 */
import { declarationWords } from './words.js';

// Only LF and CR end a line here, as they end comments and texts; with the flag `m` other characters would, too.
const OPENS = new RegExp(
  `(?:^|[\\r\\n])[ \\t]*(?:(?:${declarationWords.join('|')})(?=[ \\t\\r\\n])|at[ \\t]+(?:rest|work)(?=[ \\t]))`,
  'g',
);

/**
 * Cuts a text before each line that begins with the word of a declaration. Joined, the pieces are the text.
 *
 * INVARIANT: no token crosses a line end, and each piece but the first begins with a plain word, so that what its first token is does not
 * depend on the token before it: the tokens of the pieces are those of the whole.
 *
 * @example chunksOf('part a "A"\nduty b "B"') // ['part a "A"\n', 'duty b "B"']
 */
export function chunksOf(text: string): readonly string[] {
  const chunks: string[] = [];
  let start = 0;
  for (const match of text.matchAll(OPENS)) {
    const at = match.index + (/^[\r\n]/.test(match[0]) ? 1 : 0);
    if (at === start) continue;
    chunks.push(text.slice(start, at));
    start = at;
  }
  chunks.push(text.slice(start));
  return chunks;
}
