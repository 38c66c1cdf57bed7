/**
 * Grammar, eighth layer: tasks.
 */
import { TimingGrammar } from './grammar-timing.js';
import type { ChangeNode, OutcomeNode, ReadsNode, RemoveNode, TaskClauseNode, TaskNode } from './tree.js';

/** Reads tasks, and a variant's changes to them. */
export abstract class TaskGrammar extends TimingGrammar {
  protected readonly reads: () => ReadsNode = this.without('findings');
  protected readonly outcome: () => OutcomeNode = this.without('findings');

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
        return this.sees(2, w.each, w.storage, w.work, w.attaching) || (this.sees(2, v.Number) && this.sees(3, w.times));
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
      case w.caution:
        // With a consequence it is what follows from a band of a reading.
        return this.sees(2, v.Text) && !this.sees(3, w.then);
      case w.danger:
      case w.warning:
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
