/**
 * Which way to go at each choice of the grammar, by the next token.
 *
 * Chevrotain would work this out when the parser is built, by running every rule of the grammar in a recording mode, which takes longer than
 * reading a schedule. It is worked out once instead, when the grammar changes, and written down in lookahead-table.ts; a test compares the
 * table with what Chevrotain makes of the grammar.
 */
import type { IToken, TokenType } from 'chevrotain';

/** What Chevrotain asks at a choice: an alternative's place, or whether to go into what may be left out. */
export type Chooser = (alternatives?: readonly { readonly GATE?: () => boolean }[]) => number | boolean | undefined;

/** First tokens of each alternative; of what may be left out there is one. A kind of token stands for all that belong to it. */
export type Firsts = readonly (readonly TokenType[])[];

/** The choices of the grammar in Chevrotain's numbering: bits 0 to 7 say which of its sort in the rule, 8 to 11 the sort, the rest the rule. */
const SORTS = ['', 'OR', 'OPTION', 'MANY', 'AT_LEAST_ONE', 'MANY_SEP', 'AT_LEAST_ONE_SEP'] as const;

/** The name of a choice in the table: `plan OPTION 1`. */
export function choiceName(key: number, ruleOf: (short: number) => string | undefined): string {
  return `${ruleOf((key >> 12) << 12) ?? ''} ${SORTS[(key >> 8) & 15] ?? ''} ${key & 255}`;
}

/** Whether a choice is between alternatives. */
export function isBetweenAlternatives(key: number): boolean {
  return SORTS[(key >> 8) & 15] === 'OR';
}

/** The first tokens as the table has them: alternatives parted by `|`, kinds of token by spaces. */
export function readFirsts(written: string, kinds: Readonly<Record<string, TokenType>>): Firsts {
  return written.split('|').map((alternative) =>
    alternative.split(' ').flatMap((name) => {
      const kind = kinds[name];
      return kind === undefined ? [] : [kind];
    }),
  );
}

/** The choice between alternatives: the first that the next token can begin, and whose gate, if it has one, is open. */
export function chooseAlternative(firsts: Firsts, next: () => IToken): Chooser {
  const begins = firsts.map((kinds): ((index: number) => boolean) => {
    const indices = indicesOf(kinds);
    // An alternative that takes no token can begin before any.
    return kinds.length === 0 ? () => true : (index) => indices.has(index);
  });
  return (alternatives = []) => {
    const index = next().tokenTypeIdx;
    for (let place = 0; place < alternatives.length; place += 1) {
      if (begins[place]?.(index) === true && alternatives[place]?.GATE?.() !== false) return place;
    }
    return undefined;
  };
}

/** Whether the next token can begin what may be left out. */
export function chooseOption(firsts: Firsts, next: () => IToken): Chooser {
  const begins = indicesOf(firsts.flat());
  return () => begins.has(next().tokenTypeIdx);
}

function indicesOf(kinds: readonly TokenType[]): ReadonlySet<number> {
  return new Set(kinds.flatMap((kind) => [kind.tokenTypeIdx ?? 0, ...(kind.categoryMatches ?? [])]));
}
