/**
 * Grammar, a layer that may be left out: moving parts, places, steps and what must never be.
 */
import type { GrammarLayer } from './grammar-part.js';
import { accessChoices } from './lookahead-table.js';
import type { Vocabulary } from './tokens.js';
import type { NeverNode, PlaceNode, PositionNode, RestNode, StepClauseNode, StepNode, WalkNode } from './tree.js';

/** Reads how to get at things. */
export const readingAccess: GrammarLayer = (below) =>
  class AccessGrammar extends below {
    constructor(vocabulary: Vocabulary) {
      super(vocabulary);
      this.learn(accessChoices);
    }

    /** Position ::= "position" Name Text? PositionItem ( "," PositionItem )* */
    protected override readonly position = this.RULE('position', (): PositionNode => {
      const first = this.CONSUME(this.v.word.position);
      const name = this.SUBRULE(this.name);
      const title = this.OPTION(() => this.SUBRULE(this.text));
      const positions: PositionNode['positions'][number][] = [];
      this.AT_LEAST_ONE_SEP({ SEP: this.v.Comma, DEF: () => positions.push(this.SUBRULE(this.positionItem)) });
      return { kind: 'position', at: this.since(first), name, ...(title === undefined ? {} : { title }), positions };
    });

    /** PositionItem ::= Word "aloft"? */
    private readonly positionItem = this.RULE('positionItem', (): PositionNode['positions'][number] => {
      const name = this.nameNode(this.CONSUME(this.v.Position));
      const aloft = this.OPTION(() => this.CONSUME(this.v.word.aloft)) !== undefined;
      return { name, aloft };
    });

    /** AtRest, AtWork ::= "at" ( "rest" | "work" ) StanceItem ( "," StanceItem )* */
    protected override readonly rest = this.RULE('rest', (): RestNode => {
      const first = this.CONSUME(this.v.word.at);
      const which = this.OR<'rest' | 'work'>([
        { ALT: () => (this.CONSUME(this.v.word.rest), 'rest') },
        { ALT: () => (this.CONSUME(this.v.word.work), 'work') },
      ]);
      const items = this.SUBRULE(this.stance);
      return { kind: 'rest', at: this.since(first), which, items };
    });

    /** Place ::= "place" Name Text ( "under" Name )? */
    protected override readonly placeDeclaration = this.RULE('placeDeclaration', (): PlaceNode => {
      const first = this.CONSUME(this.v.word.place);
      const name = this.SUBRULE(this.name);
      const title = this.SUBRULE(this.title, { ARGS: [name] });
      const under = this.OPTION(() => {
        this.CONSUME(this.v.word.under);
        return this.SUBRULE(this.name);
      });
      return { kind: 'place', at: this.since(first), name, title, ...(under === undefined ? {} : { under }) };
    });

    /** Walk ::= "walk" Name "to" Name Quantity */
    protected override readonly walk = this.RULE('walk', (): WalkNode => {
      const first = this.CONSUME(this.v.word.walk);
      const from = this.SUBRULE(this.name);
      this.CONSUME(this.v.word.to);
      const to = this.SUBRULE(this.name);
      const time = this.SUBRULE(this.quantity);
      return { kind: 'walk', at: this.since(first), from, to, time };
    });

    /** Step ::= "step" Name Text Name Word "to" Word StepClause* */
    protected override readonly step = this.RULE('step', (): StepNode => {
      const first = this.CONSUME(this.v.word.step);
      const name = this.SUBRULE(this.name);
      const title = this.SUBRULE(this.title, { ARGS: [name] });
      const part = this.SUBRULE(this.name);
      const from = this.nameNode(this.CONSUME(this.v.Position));
      this.CONSUME(this.v.word.to);
      const to = this.nameNode(this.CONSUME(this.v.Position));
      const clauses = this.SUBRULE(this.stepClauses);
      return { kind: 'step', at: this.since(first), name, title, part, from, to, clauses };
    });

    private readonly stepClauses = this.RULE('stepClauses', (): readonly StepClauseNode[] => {
      if (this.RECORDING_PHASE) this.MANY(() => this.SUBRULE(this.stepClause));
      return this.series({
        opens: () => this.v.opensStepClause.has(this.LA(1).tokenType),
        ends: () => this.seesDeclaration(),
        resumes: () => this.seesStepClause(),
        read: () => this.SUBRULE(this.stepClause),
      });
    });

    /** StepClause: see grammar/duewright.ebnf. */
    private readonly stepClause = this.RULE('stepClause', (): StepClauseNode =>
      this.OR<StepClauseNode>([
        { ALT: () => this.SUBRULE(this.whileStance) },
        { ALT: () => this.SUBRULE(this.back) },
        { ALT: () => this.SUBRULE(this.oneWay) },
        { ALT: () => this.SUBRULE(this.takes) },
        { ALT: () => this.SUBRULE(this.placeAt) },
        { ALT: () => this.SUBRULE(this.under) },
        { ALT: () => this.SUBRULE(this.caution) },
        { ALT: () => this.SUBRULE(this.tools) },
        { ALT: () => this.SUBRULE(this.wording) },
      ]),
    );

    private readonly whileStance = this.RULE('whileStance', (): StepClauseNode => {
      const first = this.CONSUME(this.v.word.while);
      const condition = this.SUBRULE(this.condition);
      return { kind: 'while-stance', at: this.since(first), condition };
    });

    private readonly back = this.RULE('back', (): StepClauseNode => {
      const first = this.CONSUME(this.v.word.back);
      const title = this.SUBRULE(this.text);
      return { kind: 'back', at: this.since(first), title };
    });

    private readonly oneWay = this.RULE('oneWay', (): StepClauseNode => {
      const first = this.CONSUME(this.v.word.one);
      this.CONSUME(this.v.word.way);
      return { kind: 'one-way', at: this.since(first) };
    });

    /** Never ::= "never" Text Condition */
    protected override readonly never = this.RULE('never', (): NeverNode => {
      const first = this.CONSUME(this.v.word.never);
      const title = this.SUBRULE(this.text);
      const condition = this.SUBRULE(this.condition);
      return { kind: 'never', at: this.since(first), title, condition };
    });

    private seesStepClause(): boolean {
      const { v } = this;
      if (this.sees(1, v.word.back)) return this.sees(2, v.Text);
      if (this.sees(1, v.word.one)) return this.sees(2, v.word.way);
      return this.seesClause(v.opensStepClause);
    }
  };
