/**
 * What Chevrotain makes of the grammar when it records it: for each choice the first tokens of each way to go.
 */
import { Alternation, GAstVisitor, NonTerminal, Option, Repetition, RepetitionWithSeparator, Terminal } from 'chevrotain';
import type { IProduction, RepetitionMandatory, RepetitionMandatoryWithSeparator, Rule } from 'chevrotain';
import type { TokenKind } from '../../src/syntax/token.js';
import type { Readings } from './on-chevrotain.js';

/** A grammar that Chevrotain has recorded, with Chevrotain's own functions for its choices. */
export interface RecordedGrammar {
  readonly rules: readonly Rule[];
  readonly kinds: readonly TokenKind[];
  /** By the name of the choice in the table: which way to go before a kind of token, where no gate is closed. */
  readonly choosers: ReadonlyMap<string, (before: TokenKind, ways: number) => unknown>;
}

/** Sorts of choice in Chevrotain's numbering of choices: bits 0 to 7 say which of its sort in the rule, 8 to 11 the sort, the rest the rule. */
const SORTS = ['', 'OR', 'OPTION', 'MANY', 'AT_LEAST_ONE', 'MANY_SEP', 'AT_LEAST_ONE_SEP'];

export function recordGrammar({ machinery, parse }: Readings): RecordedGrammar {
  // Chevrotain records a grammar before it reads the first text.
  parse('');
  const { grammar, vocabulary } = machinery();
  const whole = grammar as unknown as {
    getGAstProductions: () => Readonly<Record<string, Rule>>;
    lookAheadFuncsCache: ReadonlyMap<number, (this: unknown, alternatives: readonly object[]) => unknown>;
    shortRuleNameToFull: Readonly<Record<number, string>>;
  };
  const nameOf = (key: number): string =>
    `${whole.shortRuleNameToFull[(key >> 12) << 12] ?? ''} ${SORTS[(key >> 8) & 15] ?? ''} ${key & 255}`;
  const choosers = [...whole.lookAheadFuncsCache].map(([key, choose]) => {
    const before = (kind: TokenKind, ways: number): unknown => {
      const token = { tokenType: kind, tokenTypeIdx: (kind as { readonly tokenTypeIdx?: number }).tokenTypeIdx };
      return choose.call(
        { LA_FAST: () => token, LA: () => token },
        Array.from({ length: ways }, () => ({})),
      );
    };
    return [nameOf(key), before] as const;
  });
  return { rules: Object.values(whole.getGAstProductions()), kinds: vocabulary.all, choosers: new Map(choosers) };
}

/** The names of the first tokens of something, in the order in which it names them, and whether it can be empty. */
interface First {
  readonly names: readonly string[];
  readonly empty: boolean;
}

function firstOf(production: IProduction): First {
  if (production instanceof Terminal) return { names: [production.terminalType.name], empty: false };
  if (production instanceof NonTerminal) return firstOf(production.referencedRule);
  if (production instanceof Alternation) {
    const all = production.definition.map(firstOf);
    return { names: all.flatMap(({ names }) => names), empty: all.some(({ empty }) => empty) };
  }
  const inside = firstOfAll(partsOf(production));
  return { names: inside.names, empty: inside.empty || isOptional(production) };
}

/** Everything but a token and the use of a rule is made of parts. */
function partsOf(production: IProduction): readonly IProduction[] {
  return 'definition' in production ? (production.definition as readonly IProduction[]) : [];
}

function firstOfAll(productions: readonly IProduction[]): First {
  const names: string[] = [];
  for (const production of productions) {
    const first = firstOf(production);
    names.push(...first.names);
    if (!first.empty) return { names, empty: false };
  }
  return { names, empty: true };
}

function isOptional(production: IProduction): boolean {
  return production instanceof Option || production instanceof Repetition || production instanceof RepetitionWithSeparator;
}

/** The table as src/syntax/lookahead-table.ts has it, by the name of the choice. */
export function choicesOf(rules: readonly Rule[]): Readonly<Record<string, string>> {
  const found: Record<string, string> = {};
  for (const rule of rules) rule.accept(new Collector(rule.name, found));
  return found;
}

class Collector extends GAstVisitor {
  constructor(
    private readonly rule: string,
    private readonly found: Record<string, string>,
  ) {
    super();
  }

  override visitAlternation(node: Alternation): void {
    this.note(
      'OR',
      node.idx,
      node.definition.map((each) => firstOfAll(partsOf(each))),
    );
  }
  override visitOption(node: Option): void {
    this.note('OPTION', node.idx, [firstOfAll(node.definition)]);
  }
  override visitRepetition(node: Repetition): void {
    this.note('MANY', node.idx, [firstOfAll(node.definition)]);
  }
  override visitRepetitionMandatory(node: RepetitionMandatory): void {
    this.note('AT_LEAST_ONE', node.idx, [firstOfAll(node.definition)]);
  }
  override visitRepetitionWithSeparator(node: RepetitionWithSeparator): void {
    this.note('MANY_SEP', node.idx, [firstOfAll(node.definition)]);
  }
  override visitRepetitionMandatoryWithSeparator(node: RepetitionMandatoryWithSeparator): void {
    this.note('AT_LEAST_ONE_SEP', node.idx, [firstOfAll(node.definition)]);
  }

  override visitNonTerminal(): void {}
  override visitAlternative(): void {}
  override visitTerminal(): void {}
  override visitRule(): void {}

  private note(sort: string, index: number, ways: readonly First[]): void {
    this.found[`${this.rule} ${sort} ${index}`] = ways.map(({ names }) => [...new Set(names)].join(' ')).join('|');
  }
}
