/**
 * Grammar, seventh layer: the clauses that say when a task is due, what its limits count from, and when it applies at all.
 */
import { TitleGrammar } from './grammar-titles.js';
import type {
  CountNode, EveryNode, FirstNode, GateNode, InDutyNode, OccasionNode, OccasionWhat, SeriesNode, SiteNode, SoonerNode, WhenNode, WhileEveryNode,
} from './tree.js'; // prettier-ignore

/** Reads the clauses of timing. */
export abstract class TimingGrammar extends TitleGrammar {
  protected readonly every = this.RULE('every', (): EveryNode => {
    const first = this.CONSUME(this.v.word.every);
    const plan = this.SUBRULE(this.plan);
    return { kind: 'every', at: this.since(first), plan };
  });

  /** First ::= "first" "at" ( Span ( "," Span )+ | Plan ) ( "after" Name )? */
  protected readonly first = this.RULE('first', (): FirstNode => {
    const first = this.CONSUME(this.v.word.first);
    this.CONSUME(this.v.word.at);
    const what = this.OR<FirstNode['what']>([
      { GATE: () => this.seesStages(), ALT: () => ({ kind: 'stages', spans: this.SUBRULE(this.spans) }) },
      { ALT: () => ({ kind: 'plan', plan: this.SUBRULE(this.plan) }) },
    ]);
    const after = this.OPTION({
      GATE: () => !this.sees(2, this.v.word.work, this.v.word.each, this.v.word.storage, this.v.word.attaching, this.v.Number),
      DEF: () => (this.CONSUME(this.v.word.after), this.SUBRULE(this.name)),
    });
    return { kind: 'first', at: this.since(first), what, ...(after === undefined ? {} : { after }) };
  });

  protected readonly atClause = this.RULE('atClause', (): SeriesNode | SiteNode =>
    this.OR<SeriesNode | SiteNode>([
      { GATE: () => this.sees(2, this.v.Number), ALT: () => this.SUBRULE(this.staged) },
      { ALT: () => this.SUBRULE(this.placeAt) },
    ]),
  );

  /** Series ::= "at" Span ( "," Span )* "after" Name */
  private readonly staged = this.RULE('staged', (): SeriesNode => {
    const first = this.CONSUME(this.v.word.at);
    const spans = this.SUBRULE(this.spans);
    this.CONSUME(this.v.word.after);
    const event = this.SUBRULE(this.name);
    return { kind: 'series', at: this.since(first), spans, event };
  });

  /** InDuty ::= "in" Name "every" Span */
  protected readonly inDuty = this.RULE('inDuty', (): InDutyNode => {
    const first = this.LA(1);
    const duty = this.SUBRULE(this.inName);
    this.CONSUME(this.v.word.every);
    const span = this.SUBRULE(this.span);
    return { kind: 'in-duty', at: this.since(first), duty, span };
  });

  /** While ::= "while" Condition "every" Plan */
  protected readonly whileEvery = this.RULE('whileEvery', (): WhileEveryNode => {
    const first = this.CONSUME(this.v.word.while);
    const condition = this.SUBRULE(this.condition);
    this.CONSUME(this.v.word.every);
    const plan = this.SUBRULE(this.plan);
    return { kind: 'while-every', at: this.since(first), condition, plan };
  });

  protected readonly when = this.RULE('when', (): WhenNode => {
    const first = this.CONSUME(this.v.word.when);
    const condition = this.SUBRULE(this.condition);
    return { kind: 'when', at: this.since(first), condition };
  });

  protected readonly occasion = this.RULE('occasion', (): OccasionNode => {
    const first = this.LA(1);
    const what = this.OR<OccasionWhat>([
      { ALT: () => this.SUBRULE(this.before) },
      { ALT: () => this.SUBRULE(this.after) },
      { ALT: () => this.SUBRULE(this.on) },
      { ALT: () => this.SUBRULE(this.within) },
    ]);
    return { kind: 'occasion', at: this.since(first), what };
  });

  /** Sooner ::= "sooner" "at" Share "the" "time" "that" Name "takes" "to" "fall" "to" "low" */
  protected readonly sooner = this.RULE('sooner', (): SoonerNode => {
    const first = this.CONSUME(this.v.word.sooner);
    this.CONSUME(this.v.word.at);
    const share = this.SUBRULE(this.share);
    this.CONSUME(this.v.word.the);
    this.CONSUME(this.v.word.time);
    this.CONSUME(this.v.word.that);
    const dipstick = this.SUBRULE(this.name);
    this.CONSUME(this.v.word.takes);
    this.CONSUME(this.v.word.to);
    this.CONSUME(this.v.word.fall);
    this.CONSUME(this.v.word.to);
    this.CONSUME(this.v.word.low);
    return { kind: 'sooner', at: this.since(first), share, dipstick };
  });

  /** Share ::= "half" | "a" "third" | "a" "quarter" | Percent "of" */
  private readonly share = this.RULE('share', (): number =>
    this.OR<number>([
      { ALT: () => (this.CONSUME(this.v.word.half), 1 / 2) },
      { ALT: () => (this.CONSUME(this.v.word.a), this.SUBRULE(this.fraction)) },
      {
        ALT: () => {
          const percent = this.SUBRULE(this.percent);
          this.CONSUME(this.v.word.of);
          return this.RECORDING_PHASE ? 0 : percent.number.value / 100;
        },
      },
    ]),
  );

  private readonly fraction = this.RULE('fraction', (): number =>
    this.OR<number>([{ ALT: () => (this.CONSUME(this.v.word.third), 1 / 3) }, { ALT: () => (this.CONSUME(this.v.word.quarter), 1 / 4) }]),
  );

  /** Gate ::= "only" "if" Condition | "unless" Condition | "for" "serial" Integer "to" Integer */
  protected readonly gate = this.RULE('gate', (): GateNode => {
    const first = this.LA(1);
    return this.OR<GateNode>([
      {
        ALT: () => {
          this.CONSUME(this.v.word.only);
          this.CONSUME(this.v.word.if);
          const condition = this.SUBRULE(this.condition);
          return { kind: 'only-if', at: this.since(first), condition };
        },
      },
      {
        ALT: () => {
          this.CONSUME(this.v.word.unless);
          const condition = this.SUBRULE(this.condition);
          return { kind: 'unless', at: this.since(first), condition };
        },
      },
      {
        ALT: () => {
          this.CONSUME(this.v.word.for);
          const range = this.SUBRULE(this.serialRange);
          return { kind: 'for-serial', at: this.since(first), range };
        },
      },
    ]);
  });

  /** Count ::= "count" "from" ( "doing" | "due" "if" "late" | "due" "within" "the" "allowance" ) */
  protected readonly count = this.RULE('count', (): CountNode => {
    const first = this.CONSUME(this.v.word.count);
    this.CONSUME(this.v.word.from);
    const from = this.OR<CountNode['from']>([
      { ALT: () => (this.CONSUME(this.v.word.doing), 'doing') },
      { ALT: () => (this.CONSUME(this.v.word.due), this.SUBRULE(this.dueSide)) },
    ]);
    return { kind: 'count', at: this.since(first), from };
  });

  private readonly dueSide = this.RULE('dueSide', (): CountNode['from'] =>
    this.OR<CountNode['from']>([
      { ALT: () => (this.CONSUME(this.v.word.if), this.CONSUME(this.v.word.late), 'due-if-late') },
      {
        ALT: () => {
          this.CONSUME(this.v.word.within);
          this.CONSUME(this.v.word.the);
          this.CONSUME(this.v.word.allowance);
          return 'due-within-allowance';
        },
      },
    ]),
  );

  /** A comma after the first span, with another span behind it. */
  private seesStages(): boolean {
    const { v } = this;
    if (!this.sees(1, v.Number)) return false;
    const n = this.afterSpan(1);
    return this.sees(n, v.Comma) && this.sees(n + 1, v.Number);
  }
}
