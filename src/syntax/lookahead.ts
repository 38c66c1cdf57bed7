/**
 * Which ways of a choice the next token can begin.
 *
 * With which tokens each way of each choice can begin follows from the grammar. It is worked out when the grammar changes, by Chevrotain, and
 * written down in lookahead-table.ts; a test compares the table with what Chevrotain makes of the grammar.
 */
import { isOfKind, type Token, type TokenKind } from './token.js';

/** The sorts of choice as the table names them, and the number of the first choice of each sort in its rule. */
export const CHOICES = { OR: 0, OPTION: 10, MANY: 20, AT_LEAST_ONE_SEP: 30 } as const;

/** By rule, sort and number of each choice the kinds of token that each way can begin with. */
export type ChoiceTable = Readonly<Record<string, string>>;

/** One choice of the grammar. */
export class Choice {
  /** By the number of a token's kind. */
  private readonly known: (readonly number[] | undefined)[] = [];

  /** @param firsts first tokens of each way; of what may be left out there is one way. None: that way can begin before any token. */
  constructor(readonly firsts: readonly (readonly TokenKind[])[]) {}

  /** The places of the ways that a token can begin, in order. */
  waysBefore(token: Token): readonly number[] {
    return (this.known[token.tokenType.index] ??= this.firsts.flatMap((kinds, place) =>
      kinds.length === 0 || kinds.some((kind) => isOfKind(token, kind)) ? [place] : [],
    ));
  }

  /** Whether a token can begin what may be left out. */
  beginsWith(token: Token): boolean {
    return this.waysBefore(token).length > 0;
  }
}

/** The choices of one rule, each made ready when it is first met. */
export class RuleChoices {
  private readonly choices: (Choice | undefined)[] = [];

  constructor(
    private readonly rule: string,
    private readonly kinds: ReadonlyMap<string, TokenKind>,
    private readonly table: ChoiceTable,
  ) {}

  choice(sort: keyof typeof CHOICES, number: number): Choice {
    return (this.choices[CHOICES[sort] + number] ??= new Choice(
      readFirsts(this.table[`${this.rule} ${sort} ${number}`] ?? '', this.kinds),
    ));
  }
}

/** The first tokens as the table has them: ways parted by `|`, kinds of token by spaces. */
function readFirsts(written: string, kinds: ReadonlyMap<string, TokenKind>): Choice['firsts'] {
  return written.split('|').map((way) =>
    way.split(' ').flatMap((name) => {
      const kind = kinds.get(name);
      return kind === undefined ? [] : [kind];
    }),
  );
}
