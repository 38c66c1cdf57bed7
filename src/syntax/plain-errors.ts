/**
 * What is said when a clause goes wrong: one plain sentence, in the trade's words, with what the author wrote in backticks.
 */
import { END_KIND, type Token, type TokenKind } from './token.js';

/** A token as a message shows it. */
export function shown(token: Token): string {
  if (token.tokenType === END_KIND) return END_KIND.label;
  const text = token.image.length > 40 ? `${token.image.slice(0, 39)}…` : token.image;
  return `\`${text}\``;
}

/** A list of what could stand somewhere: `a number, a name or \`of\``. */
export function oneOf(kinds: readonly TokenKind[]): string {
  const labels = [...new Set(kinds.map(({ label }) => label))];
  const last = labels.pop() ?? 'something else';
  return labels.length === 0 ? last : `${labels.join(', ')} or ${last}`;
}

/** That something else stands where something was expected. */
export function expected(what: string, actual: Token): string {
  return `Expected ${what} here, not ${shown(actual)}.`;
}
