/**
 * Grammar, seventh layer: tasks.
 */
import { TitleGrammar } from './grammar-titles.js';
import type {
  ChangeNode, CountNode, EveryNode, FirstNode, GateNode, InDutyNode, OccasionNode, OccasionWhat, RemoveNode, SeriesNode, SiteNode, SoonerNode, TaskClauseNode, TaskNode, WhenNode, WhileEveryNode,
} from './tree.js'; // prettier-ignore

/** Reads tasks, and a variant's changes to them. */
export abstract class TaskGrammar extends TitleGrammar {
  /** Task ::= "task" Name Text TaskClause* */
  protected readonly task = this.RULE('task', (): TaskNode => {
    const first = this.CONSUME(this.v.word.task);
    const lost = this.lost;
    const name = this.SUBRULE(this.name);
    const title = this.SUBRULE(this.title, { ARGS: [name] });
    const clauses = this.SUBRULE(this.taskClauses);
    return { kind: 'task', at: this.since(first), name, title, clauses, ...this.partialSince(lost) };
  });

  /** Change ::= "change" "task" Name Text? TaskClause* */
  protected readonly change = this.RULE('change', (): ChangeNode => {
    const first = this.CONSUME(this.v.word.change);
    const lost = this.lost;
    this.CONSUME(this.v.word.task);
    const name = this.SUBRULE(this.name);
    const title = this.OPTION(() => this.SUBRULE(this.text));
    const clauses = this.SUBRULE(this.taskClauses);
    return { kind: 'change', at: this.since(first), name, ...(title === undefined ? {} : { title }), clauses, ...this.partialSince(lost) };
  });

  /** Remove ::= "remove" "task" Name */
  protected readonly remove = this.RULE('remove', (): RemoveNode => {
    const first = this.CONSUME(this.v.word.remove);
    this.CONSUME(this.v.word.task);
    const name = this.SUBRULE(this.name);
    return { kind: 'remove', at: this.since(first), name };
  });

  private readonly taskClauses = this.RULE('taskClauses', (): readonly TaskClauseNode[] => {
    if (this.RECORDING_PHASE) this.MANY(() => this.SUBRULE(this.taskClause));
    return this.series({
      opens: () => this.v.opensTaskClause.has(this.LA(1).tokenType),
      ends: () => this.seesDeclaration(),
      resumes: () => this.seesTaskClause(),
      read: () => this.SUBRULE(this.taskClause),
    });
  });

  /** TaskClause: see grammar/duewright.ebnf. */
  private readonly taskClause = this.RULE('taskClause', (): TaskClauseNode =>
    this.OR<TaskClauseNode>({
      DEF: (this.taskClauseChoices ??= [
        { ALT: () => this.SUBRULE(this.every) },
        { ALT: () => this.SUBRULE(this.first) },
        { ALT: () => this.SUBRULE(this.atClause) },
        { ALT: () => this.SUBRULE(this.inDuty) },
        { ALT: () => this.SUBRULE(this.whileEvery) },
        { ALT: () => this.SUBRULE(this.when) },
        { ALT: () => this.SUBRULE(this.occasion) },
        { ALT: () => this.SUBRULE(this.sooner) },
        { ALT: () => this.SUBRULE(this.gate) },
        { ALT: () => this.SUBRULE(this.count) },
        { ALT: () => this.SUBRULE(this.allow) },
        { ALT: () => this.SUBRULE(this.lead) },
        { ALT: () => this.SUBRULE(this.hold) },
        { ALT: () => this.SUBRULE(this.takes) },
        { ALT: () => this.SUBRULE(this.under) },
        { ALT: () => this.SUBRULE(this.with) },
        { ALT: () => this.SUBRULE(this.reads) },
        { ALT: () => this.SUBRULE(this.uses) },
        { ALT: () => this.SUBRULE(this.tools) },
        { ALT: () => this.SUBRULE(this.tighten) },
        { ALT: () => this.SUBRULE(this.wording) },
        { ALT: () => this.SUBRULE(this.caution) },
        { ALT: () => this.SUBRULE(this.dependence) },
        { ALT: () => this.SUBRULE(this.record) },
      ]),
    }),
  );

  declare private taskClauseChoices: { readonly ALT: () => TaskClauseNode }[] | undefined;

  private readonly every = this.RULE('every', (): EveryNode => {
    const first = this.CONSUME(this.v.word.every);
    const plan = this.SUBRULE(this.plan);
    return { kind: 'every', at: this.since(first), plan };
  });

  /** First ::= "first" "at" ( Span ( "," Span )+ | Plan ) ( "after" Name )? */
  private readonly first = this.RULE('first', (): FirstNode => {
    const first = this.CONSUME(this.v.word.first);
    this.CONSUME(this.v.word.at);
    const what = this.OR<FirstNode['what']>([
      { GATE: () => this.seesStages(), ALT: () => ({ kind: 'stages', spans: this.SUBRULE(this.spans) }) },
      { ALT: () => ({ kind: 'plan', plan: this.SUBRULE(this.plan) }) },
    ]);
    const after = this.OPTION({
      GATE: () => !this.sees(2, this.v.word.work, this.v.word.each, this.v.word.storage, this.v.word.attaching),
      DEF: () => (this.CONSUME(this.v.word.after), this.SUBRULE(this.name)),
    });
    return { kind: 'first', at: this.since(first), what, ...(after === undefined ? {} : { after }) };
  });

  private readonly atClause = this.RULE('atClause', (): SeriesNode | SiteNode =>
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
  private readonly inDuty = this.RULE('inDuty', (): InDutyNode => {
    const first = this.LA(1);
    const duty = this.SUBRULE(this.inName);
    this.CONSUME(this.v.word.every);
    const span = this.SUBRULE(this.span);
    return { kind: 'in-duty', at: this.since(first), duty, span };
  });

  /** While ::= "while" Condition "every" Plan */
  private readonly whileEvery = this.RULE('whileEvery', (): WhileEveryNode => {
    const first = this.CONSUME(this.v.word.while);
    const condition = this.SUBRULE(this.condition);
    this.CONSUME(this.v.word.every);
    const plan = this.SUBRULE(this.plan);
    return { kind: 'while-every', at: this.since(first), condition, plan };
  });

  private readonly when = this.RULE('when', (): WhenNode => {
    const first = this.CONSUME(this.v.word.when);
    const condition = this.SUBRULE(this.condition);
    return { kind: 'when', at: this.since(first), condition };
  });

  private readonly occasion = this.RULE('occasion', (): OccasionNode => {
    const first = this.LA(1);
    const what = this.OR<OccasionWhat>([
      { ALT: () => this.SUBRULE(this.before) },
      { ALT: () => this.SUBRULE(this.after) },
      { ALT: () => this.SUBRULE(this.on) },
      { ALT: () => this.SUBRULE(this.withinAfter) },
    ]);
    return { kind: 'occasion', at: this.since(first), what };
  });

  /** Sooner ::= "sooner" "at" Share "the" "time" "that" Name "takes" "to" "fall" "to" "low" */
  private readonly sooner = this.RULE('sooner', (): SoonerNode => {
    const first = this.CONSUME(this.v.word.sooner);
    this.CONSUME(this.v.word.at);
    const share = this.SUBRULE(this.share);
    this.CONSUME(this.v.word.the);
    this.CONSUME(this.v.word.time);
    this.CONSUME(this.v.word.that);
    const dipstick = this.SUBRULE(this.name);
    this.CONSUME(this.v.word.takes);
    this.CONSUME1(this.v.word.to);
    this.CONSUME(this.v.word.fall);
    this.CONSUME2(this.v.word.to);
    this.CONSUME(this.v.word.low);
    return { kind: 'sooner', at: this.since(first), share, dipstick };
  });

  /** Share ::= "half" | "a" "third" | "a" "quarter" | Percent "of" */
  private readonly share = this.RULE('share', (): number =>
    this.OR1<number>([
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
  private readonly gate = this.RULE('gate', (): GateNode => {
    const first = this.LA(1);
    return this.OR<GateNode>([
      {
        ALT: () => {
          this.CONSUME(this.v.word.only);
          this.CONSUME(this.v.word.if);
          const condition = this.SUBRULE1(this.condition);
          return { kind: 'only-if', at: this.since(first), condition };
        },
      },
      {
        ALT: () => {
          this.CONSUME(this.v.word.unless);
          const condition = this.SUBRULE2(this.condition);
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
  private readonly count = this.RULE('count', (): CountNode => {
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

  /** After a mistake: words that open a clause and nothing else, or that are followed by what their clause needs. */
  private seesTaskClause(): boolean {
    return this.seesClause(this.v.opensTaskClause);
  }

  /** A clause of one of these openers begins here beyond doubt. */
  protected seesClause(openers: ReadonlySet<unknown>): boolean {
    const { tokenType } = this.LA(1);
    if (!openers.has(tokenType)) return false;
    const { v } = this;
    const w = v.word;
    switch (tokenType) {
      case w.first:
        return this.sees(2, w.at);
      case w.at:
        return !this.sees(0, w.first, w.sooner) && (this.sees(2, v.Number) || (this.seesA(2, v.Name) && !this.sees(2, w.least, w.most)));
      case w.in:
        return this.seesA(2, v.Name) && this.sees(3, w.every);
      case w.every:
        return this.sees(2, v.Number, v.LParen) || this.seesA(2, v.Name);
      case w.while:
      case w.with:
      case w.unless: // prettier-ignore
        return this.seesA(2, v.Name) || this.sees(2, w.not, v.LParen, w.in);
      case w.when:
        return !this.sees(0, w.hold) && !this.sees(2, w.overdue);
      case w.before:
      case w.after: // prettier-ignore
        return this.sees(2, w.each, w.storage, w.work, w.attaching);
      case w.on:
      case w.reads:
      case w.follows:
      case w.under: // prettier-ignore
        return this.seesA(2, v.Name);
      case w.within:
        return this.sees(2, v.Number) && [4, 5, 6, 7].some((n) => this.sees(n, w.after));
      case w.hold:
        return this.sees(2, w.when, v.Number, w.lesser);
      case w.record:
        return this.sees(2, w.kept);
      case w.danger:
      case w.warning:
      case w.caution:
      case w.notice:
      case w.do:
      case w.reason:
      case w.source: // prettier-ignore
        return this.sees(2, v.Text);
      case w.for:
        return this.sees(2, w.serial);
      case w.takes:
        return !this.sees(2, w.to);
      default:
        return true;
    }
  }

  /** A declaration begins here: its own word, or `at rest`, `at work` with a stance. */
  protected seesDeclaration(): boolean {
    return this.v.opensDeclaration.has(this.LA(1).tokenType) || this.seesAtRest();
  }

  /** `at rest panel fitted`, not a place called `rest`: after a place comes a clause, and clauses begin with other words. */
  private seesAtRest(): boolean {
    const { v } = this;
    if (!this.sees(1, v.word.at) || !this.sees(2, v.word.rest, v.word.work) || !this.seesA(3, v.Name)) return false;
    if (this.sees(3, v.word.one) && this.sees(4, v.word.way)) return false;
    return this.sees(4, v.word.is) || this.seesA(4, v.Position);
  }
}
