/**
 * What Chevrotain makes of the grammar when it records it: for each choice the first tokens of each way to go.
 */
import { Alternation, GAstVisitor, NonTerminal, Option, Repetition, RepetitionWithSeparator, Terminal } from 'chevrotain';
import type { IProduction, RepetitionMandatory, RepetitionMandatoryWithSeparator, Rule } from 'chevrotain';
import { Grammar } from '../../src/syntax/grammar.js';
import { makeVocabulary } from '../../src/syntax/tokens.js';

/** A grammar that Chevrotain has recorded, with Chevrotain's own functions for its choices. */
export interface RecordedGrammar {
  readonly rules: readonly Rule[];
  readonly kinds: ReturnType<typeof makeVocabulary>;
  readonly grammar: Grammar;
  readonly choosers: ReadonlyMap<number, (this: unknown, alternatives?: readonly object[]) => unknown>;
  readonly ruleOf: (short: number) => string | undefined;
}

export function recordGrammar(): RecordedGrammar {
  const kinds = makeVocabulary();
  const grammar = new Grammar(kinds);
  const whole = grammar as unknown as {
    performSelfAnalysis: () => void;
    lookAheadFuncsCache: RecordedGrammar['choosers'];
    shortRuleNameToFull: Readonly<Record<number, string>>;
  };
  whole.performSelfAnalysis();
  const rules = Object.values(grammar.getGAstProductions());
  return { rules, kinds, grammar, choosers: whole.lookAheadFuncsCache, ruleOf: (short) => whole.shortRuleNameToFull[short] };
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
