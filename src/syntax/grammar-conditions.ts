/**
 * Grammar, a layer that may be left out: conditions.
 */
import type { Token } from './token.js';
import type { GrammarLayer } from './grammar-part.js';
import { conditionChoices } from './lookahead-table.js';
import type { Vocabulary } from './tokens.js';
import type { ConditionNode, FactNode, NameNode, NumberNode } from './tree.js';

/** Reads what is true or not. */
export const readingConditions: GrammarLayer = (below) =>
  class ConditionGrammar extends below {
    constructor(vocabulary: Vocabulary) {
      super(vocabulary);
      this.learn(conditionChoices);
    }

    /** Condition ::= AllOf ( "or" AllOf )* */
    protected override readonly condition = this.RULE('condition', (): ConditionNode => {
      const first = this.LA(1);
      const parts: ConditionNode[] = [];
      this.AT_LEAST_ONE_SEP({ SEP: this.v.word.or, DEF: () => parts.push(this.SUBRULE(this.allOf)) });
      const [only] = parts;
      return parts.length === 1 && only !== undefined ? only : { kind: 'or', at: this.since(first), parts };
    });

    /** AllOf ::= Factor ( ( "and" | "," ) Factor )* */
    private readonly allOf = this.RULE('allOf', (): ConditionNode => {
      const first = this.LA(1);
      const start = this.SUBRULE(this.factor);
      const parts: ConditionNode[] = [start];
      this.MANY(() => {
        this.OR([{ ALT: () => this.CONSUME(this.v.word.and) }, { ALT: () => this.CONSUME(this.v.Comma) }]);
        parts.push(this.SUBRULE(this.factor));
      });
      return parts.length === 1 ? start : { kind: 'and', at: this.since(first), parts };
    });

    /** Factor ::= "not" Factor | "(" Condition ")" | Fact */
    private readonly factor = this.RULE('factor', (): ConditionNode =>
      this.OR<ConditionNode>([
        {
          ALT: () => {
            const not = this.CONSUME(this.v.word.not);
            const part = this.SUBRULE(this.factor);
            return { kind: 'not', at: this.since(not), part };
          },
        },
        {
          ALT: () => {
            this.CONSUME(this.v.LParen);
            const inner = this.SUBRULE(this.condition);
            this.CONSUME(this.v.RParen);
            return inner;
          },
        },
        { ALT: () => this.SUBRULE(this.fact) },
      ]),
    );

    /** Fact ::= Name … | "in" Name | "machine" … | "date" … */
    private readonly fact = this.RULE('fact', (): FactNode =>
      this.OR<FactNode>({
        ERR_MSG: 'a condition such as `panel off` or `coolant above 97 °C`',
        DEF: [
          { GATE: () => this.seesMachineFact(), ALT: () => this.SUBRULE(this.machineFact) },
          { GATE: () => this.seesAtWork(), ALT: () => this.SUBRULE(this.atWorkFact) },
          { GATE: () => this.seesNoOuting(), ALT: () => this.SUBRULE(this.unworkedFact) },
          { GATE: () => this.seesSeason(), ALT: () => this.SUBRULE(this.season) },
          { ALT: () => this.SUBRULE(this.dutyFact) },
          { ALT: () => this.SUBRULE(this.namedFact) },
        ],
      }),
    );

    private readonly dutyFact = this.RULE('dutyFact', (): FactNode => {
      const first = this.LA(1);
      const duty = this.SUBRULE(this.inName);
      return { kind: 'in', at: this.since(first), duty };
    });

    private readonly machineFact = this.RULE('machineFact', (): FactNode => {
      const first = this.CONSUME(this.v.word.machine);
      const what = this.OR<'older' | 'idle'>([
        { ALT: () => (this.CONSUME(this.v.word.older), this.CONSUME(this.v.word.than), 'older') },
        { ALT: () => (this.CONSUME(this.v.word.idle), this.CONSUME(this.v.word.for), 'idle') },
      ]);
      const span = this.SUBRULE(this.span);
      return { kind: 'machine', at: this.since(first), what, span };
    });

    /** "machine" "at" "work" */
    private readonly atWorkFact = this.RULE('atWorkFact', (): FactNode => {
      const first = this.CONSUME(this.v.word.machine);
      this.CONSUME(this.v.word.at);
      this.CONSUME(this.v.word.work);
      return { kind: 'at-work', at: this.since(first) };
    });

    /** "no" "outing" "since" Name */
    private readonly unworkedFact = this.RULE('unworkedFact', (): FactNode => {
      const first = this.CONSUME(this.v.word.no);
      this.CONSUME(this.v.word.outing);
      this.CONSUME(this.v.word.since);
      const task = this.SUBRULE(this.name);
      return { kind: 'unworked', at: this.since(first), task };
    });

    private readonly season = this.RULE('season', (): FactNode => {
      const first = this.CONSUME(this.v.word.date);
      this.CONSUME(this.v.word.from);
      const from = this.SUBRULE(this.dayOfMonth);
      this.CONSUME(this.v.word.to);
      const to = this.SUBRULE(this.dayOfMonth);
      return { kind: 'season', at: this.since(first), from, to };
    });

    private readonly namedFact = this.RULE('namedFact', (): FactNode => {
      const first = this.CONSUME(this.v.Name);
      const subject = this.nameNode(first);
      return this.OR<FactNode>({
        ERR_MSG: `what is said of \`${subject.text}\`, such as \`is open\` or \`above 97 °C\``,
        DEF: [
          { ALT: () => this.SUBRULE(this.comparison, { ARGS: [first, subject] }) },
          { ALT: () => this.SUBRULE(this.betweenFact, { ARGS: [first, subject] }) },
          { GATE: () => this.seesA(2, this.v.Number), ALT: () => this.SUBRULE(this.trend, { ARGS: [first, subject] }) },
          {
            GATE: () => this.sees(2, this.v.word.done, this.v.word.happened),
            ALT: () => this.SUBRULE(this.everFact, { ARGS: [first, subject] }),
          },
          { GATE: () => this.seesRecent(), ALT: () => this.SUBRULE(this.recent, { ARGS: [first, subject] }) },
          { GATE: () => this.sees(2, this.v.word.than), ALT: () => this.SUBRULE(this.worse, { ARGS: [first, subject] }) },
          { ALT: () => this.SUBRULE(this.isFact, { ARGS: [first, subject] }) },
        ],
      });
    });

    private readonly isFact = this.RULE('isFact', (first: Token, subject: NameNode): FactNode => {
      this.OPTION(() => this.CONSUME(this.v.word.is));
      const word = this.nameNode(this.CONSUME(this.v.Position));
      return { kind: 'is', at: this.since(first), subject, word };
    });

    private readonly comparison = this.RULE('comparison', (first: Token, subject: NameNode): FactNode => {
      const op = this.OR<'above' | 'below' | 'at-least' | 'at-most'>([
        { ALT: () => (this.CONSUME(this.v.word.above), 'above') },
        { ALT: () => (this.CONSUME(this.v.word.below), 'below') },
        { ALT: () => (this.CONSUME(this.v.word.at), this.SUBRULE(this.leastOrMost)) },
      ]);
      const level = this.SUBRULE(this.level);
      return { kind: 'compare', at: this.since(first), subject, op, level };
    });

    private readonly leastOrMost = this.RULE('leastOrMost', (): 'at-least' | 'at-most' =>
      this.OR<'at-least' | 'at-most'>([
        { ALT: () => (this.CONSUME(this.v.word.least), 'at-least') },
        { ALT: () => (this.CONSUME(this.v.word.most), 'at-most') },
      ]),
    );

    private readonly betweenFact = this.RULE('betweenFact', (first: Token, subject: NameNode): FactNode => {
      this.CONSUME(this.v.word.from);
      const from = this.SUBRULE(this.level);
      this.CONSUME(this.v.word.to);
      const to = this.SUBRULE(this.level);
      return { kind: 'between', at: this.since(first), subject, from, to };
    });

    private readonly trend = this.RULE('trend', (first: Token, subject: NameNode): FactNode => {
      const direction = this.OR<'climbs' | 'falls'>([
        { ALT: () => (this.CONSUME(this.v.word.climbs), 'climbs') },
        { ALT: () => (this.CONSUME(this.v.word.falls), 'falls') },
      ]);
      const by = this.SUBRULE(this.quantity);
      this.CONSUME(this.v.word.within);
      const within = this.SUBRULE(this.span);
      return { kind: 'trend', at: this.since(first), subject, direction, by, within };
    });

    private readonly recent = this.RULE('recent', (first: Token, subject: NameNode): FactNode => {
      const what = this.OR<'read' | 'done' | 'happened'>([
        { ALT: () => (this.CONSUME(this.v.word.read), 'read') },
        { ALT: () => (this.CONSUME(this.v.word.done), 'done') },
        { ALT: () => (this.CONSUME(this.v.word.happened), 'happened') },
      ]);
      const times = this.OPTION({ GATE: () => what !== 'read', DEF: () => this.SUBRULE(this.times) });
      this.CONSUME(this.v.word.within);
      const within = this.SUBRULE(this.span);
      return { kind: 'recent', at: this.since(first), subject, what, ...(times === undefined ? {} : { times }), within };
    });

    /** "ever" ( "done" | "happened" ) */
    private readonly everFact = this.RULE('everFact', (first: Token, subject: NameNode): FactNode => {
      this.CONSUME(this.v.word.ever);
      const what = this.OR<'done' | 'happened'>([
        { ALT: () => (this.CONSUME(this.v.word.done), 'done') },
        { ALT: () => (this.CONSUME(this.v.word.happened), 'happened') },
      ]);
      return { kind: 'recent', at: this.since(first), subject, what };
    });

    /** Integer "times" */
    private readonly times = this.RULE('times', (): NumberNode => {
      const number = this.integer(this.CONSUME(this.v.Number));
      this.CONSUME(this.v.word.times);
      return number;
    });

    private readonly worse = this.RULE('worse', (first: Token, subject: NameNode): FactNode => {
      this.CONSUME(this.v.word.worse);
      this.CONSUME(this.v.word.than);
      const than = this.SUBRULE(this.name);
      return { kind: 'worse', at: this.since(first), defect: subject, than };
    });

    private seesMachineFact(): boolean {
      return this.sees(2, this.v.word.older, this.v.word.idle) && this.sees(3, this.v.word.than, this.v.word.for);
    }

    private seesAtWork(): boolean {
      return this.sees(2, this.v.word.at) && this.sees(3, this.v.word.work);
    }

    private seesNoOuting(): boolean {
      return this.sees(2, this.v.word.outing) && this.sees(3, this.v.word.since);
    }

    private seesRecent(): boolean {
      return this.sees(2, this.v.word.within) || (this.sees(2, this.v.Number) && this.sees(3, this.v.word.times));
    }

    private seesSeason(): boolean {
      return this.sees(2, this.v.word.from) && this.sees(3, this.v.Number) && this.sees(4, this.v.Month);
    }
  };
