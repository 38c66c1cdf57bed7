/**
 * Grammar, second layer: when a task falls due – limits and plans.
 */
import type { Span } from '../base/span.js';
import { diagnose } from '../diagnostics/catalogue-entry.js';
import { syntaxCodes } from '../diagnostics/codes/syntax.js';
import { QuantityGrammar } from './grammar-quantities.js';
import type { LimitNode, MarginNode, MarkDayNode, OftenNode, PercentNode, PlanNode, SpanNode, StandstillNode, UnitNode } from './tree.js';

/** Reads intervals. */
export abstract class PlanGrammar extends QuantityGrammar {
  /** Plan ::= PlanTerm ( ( "or" PlanTerm )+ ","? "whichever" ( "first" | "last" ) )? */
  protected readonly plan = this.RULE('plan', (): PlanNode => {
    const start = this.LA(1);
    const first = this.SUBRULE(this.planTerm);
    const parts: PlanNode[] = [first];
    this.MANY(() => {
      this.CONSUME(this.v.word.or);
      parts.push(this.SUBRULE(this.planTerm));
    });
    if (!this.RECORDING_PHASE && parts.length === 1) return first;
    const written = this.since(start);
    const mode = this.OPTION({ GATE: () => this.seesWhichever(), DEF: () => this.SUBRULE(this.whichever) });
    if (mode === undefined && !this.RECORDING_PHASE) this.missWhichever(written);
    return { kind: 'whichever', at: this.since(start), ...(mode === undefined ? {} : { mode }), parts };
  });

  protected readonly whichever = this.RULE('whichever', (): 'first' | 'last' => {
    this.OPTION(() => this.CONSUME(this.v.Comma));
    this.CONSUME(this.v.word.whichever);
    return this.OR<'first' | 'last'>([
      { ALT: () => (this.CONSUME(this.v.word.first), 'first') },
      { ALT: () => (this.CONSUME(this.v.word.last), 'last') },
    ]);
  });

  /** PlanTerm ::= "(" Plan ")" | Limit */
  private readonly planTerm = this.RULE('planTerm', (): PlanNode =>
    this.OR<PlanNode>({
      ERR_MSG: 'an interval such as `100 h of engine` or `12 months`',
      DEF: [
        {
          ALT: () => {
            this.CONSUME(this.v.LParen);
            const plan = this.SUBRULE(this.plan);
            this.CONSUME(this.v.RParen);
            return plan;
          },
        },
        { ALT: () => this.SUBRULE(this.limit) },
      ],
    }),
  );

  /** Limit: see grammar-weekday-marks.ts. */
  protected readonly weekdayMarks: () => LimitNode = this.without('weekdayMarks');

  /** Limit: see grammar/duewright.ebnf. */
  protected readonly limit = this.RULE('limit', (): LimitNode =>
    this.OR<LimitNode>({
      ERR_MSG: 'an interval such as `100 h of engine` or `12 months`',
      DEF: [
        { ALT: () => this.SUBRULE(this.multiple) },
        { ALT: () => this.SUBRULE(this.look) },
        { GATE: () => this.seesPeriod(), ALT: () => this.SUBRULE(this.calendarPeriod) },
        { ALT: () => this.SUBRULE(this.weekdays) },
        { GATE: () => this.seesCalendar('on'), ALT: () => this.SUBRULE(this.calendarMarks) },
        { GATE: () => this.seesCalendar('in'), ALT: () => this.SUBRULE(this.calendarWindow) },
        { GATE: () => this.seesWeekdayOn(), ALT: () => this.SUBRULE(this.weekdayMarks) },
        { ALT: () => this.SUBRULE(this.interval) },
      ],
    }),
  );

  private readonly interval = this.RULE('interval', (): LimitNode => {
    const first = this.LA(1);
    const strict = this.OPTION(() => (this.CONSUME(this.v.word.more), this.CONSUME(this.v.word.than), true)) ?? false;
    const share = this.OPTION1({
      GATE: () => this.seesShare(),
      DEF: () => this.SUBRULE(this.shareOf),
    });
    const span = this.SUBRULE(this.span);
    const often = this.OPTION2(() => this.SUBRULE(this.often));
    const standstill = this.OPTION3({
      GATE: () => often === undefined && this.seesStandstill(),
      DEF: () => this.SUBRULE(this.standstill),
    });
    const whole = share === undefined ? span : this.shared(share, span);
    return {
      kind: 'interval',
      at: this.since(first),
      span: whole,
      strict,
      ...(often === undefined ? {} : { often }),
      ...(standstill === undefined ? {} : { standstill }),
    };
  });

  /** A percentage, and not as the unit of a span: `of` and a span come next, or a span before which the `of` was left out. */
  private seesShare(): boolean {
    if (!this.sees(2, this.v.Percent) || this.seesRestOfSpan(3)) return false;
    return this.sees(3, this.v.word.of) || (this.sees(3, this.v.Number) && !this.sees(4, this.v.word.times));
  }

  /** Integer "times" ( ","? Span "apart" )? */
  private readonly often = this.RULE('often', (): OftenNode => {
    const first = this.CONSUME(this.v.Number);
    this.CONSUME(this.v.word.times);
    const apart = this.OPTION({
      GATE: () => this.sees(this.sees(1, this.v.Comma) ? 2 : 1, this.v.Number),
      DEF: () => this.SUBRULE(this.apart),
    });
    return { kind: 'often', at: this.since(first), times: this.integer(first), ...(apart === undefined ? {} : { apart }) };
  });

  private readonly apart = this.RULE('apart', (): SpanNode => {
    this.OPTION(() => this.CONSUME(this.v.Comma));
    const span = this.SUBRULE(this.span);
    this.CONSUME(this.v.word.apart);
    return span;
  });

  /** ","? "not" "counting" "storage" ( "of" Span "or" "more" )? */
  private readonly standstill = this.RULE('standstill', (): StandstillNode => {
    this.OPTION1(() => this.CONSUME(this.v.Comma));
    const first = this.CONSUME(this.v.word.not);
    this.CONSUME(this.v.word.counting);
    this.CONSUME(this.v.word.storage);
    const atLeast = this.OPTION2(() => {
      this.CONSUME(this.v.word.of);
      const span = this.SUBRULE(this.span);
      this.CONSUME(this.v.word.or);
      this.CONSUME(this.v.word.more);
      return span;
    });
    return { kind: 'standstill', at: this.since(first), ...(atLeast === undefined ? {} : { atLeast }) };
  });

  /** Percent "of" */
  private readonly shareOf = this.RULE('shareOf', (): PercentNode => {
    const percent = this.SUBRULE(this.percent);
    this.CONSUME(this.v.word.of);
    return percent;
  });

  private shared(share: PercentNode, span: SpanNode): SpanNode {
    return { ...span, at: this.reach(share.at, span.at), share };
  }

  /** "calendar" ( "week" | "month" | "quarter" | "half-year" | "year" ) Often? */
  private readonly calendarPeriod = this.RULE('calendarPeriod', (): LimitNode => {
    const first = this.CONSUME(this.v.word.calendar);
    const { week, month, quarter, 'half-year': halfYear, year } = this.v.word;
    const unit = this.OR([
      { ALT: () => this.CONSUME(week) },
      { ALT: () => this.CONSUME(month) },
      { ALT: () => this.CONSUME(quarter) },
      { ALT: () => this.CONSUME(halfYear) },
      { ALT: () => this.CONSUME(year) },
    ]);
    const often = this.OPTION(() => this.SUBRULE(this.often));
    return { kind: 'calendar-period', at: this.since(first), unit: this.unitNode(unit), ...(often === undefined ? {} : { often }) };
  });

  /** Weekday ( ( "," | "and" ) Weekday )* */
  private readonly weekdays = this.RULE('weekdays', (): LimitNode => {
    const first = this.CONSUME(this.v.Weekday);
    const days = [this.weekdayNode(first)];
    this.MANY({
      GATE: () => this.sees(2, this.v.Weekday),
      DEF: () => {
        this.OR([{ ALT: () => this.CONSUME(this.v.Comma) }, { ALT: () => this.CONSUME(this.v.word.and) }]);
        days.push(this.weekdayNode(this.CONSUME(this.v.Weekday)));
      },
    });
    return { kind: 'weekdays', at: this.since(first), days };
  });

  private readonly multiple = this.RULE('multiple', (): LimitNode => {
    const first = this.CONSUME(this.v.word.multiple);
    this.CONSUME(this.v.word.of);
    const span = this.SUBRULE(this.span);
    return { kind: 'multiple', at: this.since(first), span };
  });

  private readonly look = this.RULE('look', (): LimitNode => {
    const first = this.CONSUME(this.v.word.look);
    this.CONSUME(this.v.word.in);
    const span = this.SUBRULE(this.span);
    this.CONSUME(this.v.word.from);
    this.CONSUME(this.v.word.sign);
    this.CONSUME(this.v.word.to);
    this.CONSUME(this.v.word.failure);
    this.CONSUME(this.v.word.finding);
    const finding = this.SUBRULE(this.percent);
    this.CONSUME(this.v.word.missing);
    const missing = this.SUBRULE(this.percent);
    return { kind: 'look', at: this.since(first), span, finding, missing };
  });

  private readonly calendarMarks = this.RULE('calendarMarks', (): LimitNode => {
    const first = this.LA(1);
    const number = this.OPTION(() => this.integer(this.CONSUME(this.v.Number)));
    const unit = this.SUBRULE(this.calendarUnit);
    this.CONSUME(this.v.word.on);
    const days = [this.SUBRULE(this.markDay)];
    this.MANY({
      GATE: () => !this.sees(2, this.v.word.whichever),
      DEF: () => {
        this.CONSUME(this.v.Comma);
        days.push(this.SUBRULE(this.markDay));
      },
    });
    const whereItExists =
      this.OPTION1(() => {
        this.CONSUME(this.v.word.where);
        this.CONSUME(this.v.word.it);
        this.CONSUME(this.v.word.exists);
        return true;
      }) ?? false;
    return { kind: 'calendar-marks', at: this.since(first), ...(number === undefined ? {} : { number }), unit, days, whereItExists };
  });

  private readonly calendarWindow = this.RULE('calendarWindow', (): LimitNode => {
    const first = this.LA(1);
    const number = this.OPTION(() => this.integer(this.CONSUME(this.v.Number)));
    const unit = this.SUBRULE(this.calendarUnit);
    this.CONSUME(this.v.word.in);
    const month = this.SUBRULE(this.month);
    return { kind: 'calendar-window', at: this.since(first), ...(number === undefined ? {} : { number }), unit, month };
  });

  /** CalendarUnit ::= "month" | "months" | "year" | "years" */
  protected readonly calendarUnit = this.RULE('calendarUnit', (): UnitNode => {
    const { month, months, year, years } = this.v.word;
    const token = this.OR([
      { ALT: () => this.CONSUME(month) },
      { ALT: () => this.CONSUME(months) },
      { ALT: () => this.CONSUME(year) },
      { ALT: () => this.CONSUME(years) },
    ]);
    return this.unitNode(token);
  });

  /** MarkDay ::= "day" Integer | Integer Month */
  private readonly markDay = this.RULE('markDay', (): MarkDayNode =>
    this.OR<MarkDayNode>([
      {
        ALT: () => {
          const first = this.CONSUME(this.v.word.day);
          const day = this.integer(this.CONSUME(this.v.Number));
          return { kind: 'mark-day', at: this.since(first), day };
        },
      },
      { ALT: () => this.SUBRULE(this.dayOfMonth) },
    ]),
  );

  /** Margin ::= Percent | "lesser" "of" Margin "and" Margin | Span */
  protected readonly margin = this.RULE('margin', (): MarginNode =>
    this.OR<MarginNode>([
      {
        GATE: () => this.sees(2, this.v.Percent) && !this.sees(3, this.v.word.of) && !this.seesDays(3),
        ALT: () => this.SUBRULE(this.percent),
      },
      {
        ALT: () => {
          const lesser = this.CONSUME(this.v.word.lesser);
          this.CONSUME(this.v.word.of);
          const first = this.SUBRULE(this.margin);
          this.CONSUME(this.v.word.and);
          const second = this.SUBRULE(this.margin);
          return { kind: 'lesser', at: this.since(lesser), first, second };
        },
      },
      { ALT: () => this.SUBRULE(this.span) },
    ]),
  );

  /** Span ( "," Span )* */
  protected readonly spans = this.RULE('spans', (): readonly SpanNode[] => {
    const spans: SpanNode[] = [];
    this.AT_LEAST_ONE_SEP({ SEP: this.v.Comma, DEF: () => spans.push(this.SUBRULE(this.span)) });
    return spans;
  });

  private seesStandstill(): boolean {
    const not = this.sees(1, this.v.Comma) ? 2 : 1;
    return this.sees(not, this.v.word.not) && this.sees(not + 1, this.v.word.counting);
  }

  private seesPeriod(): boolean {
    const { calendar, week, month, quarter, 'half-year': halfYear, year } = this.v.word;
    return this.sees(1, calendar) && this.sees(2, week, month, quarter, halfYear, year);
  }

  /** `month on the first Monday`, `2 weeks on Monday`. */
  private seesWeekdayOn(): boolean {
    const on = this.sees(1, this.v.Number) ? 3 : 2;
    return this.sees(on, this.v.word.on) && this.sees(on + 1, this.v.word.the, this.v.Weekday);
  }

  protected seesWhichever(): boolean {
    return !this.sees(1, this.v.Comma) || this.sees(2, this.v.word.whichever);
  }

  protected missWhichever(plan: Span): void {
    // In parentheses it is told as a slip.
    if (this.sees(1, this.v.LParen) && this.sees(2, this.v.word.whichever)) return;
    const at = { ...plan, start: plan.end };
    this.pending.push(
      diagnose(syntaxCodes.whicheverMissing, {
        message: 'Two limits joined by `or` must say which of them decides.',
        at: plan,
        help: 'Write `whichever first` if the first to be reached makes it due, `whichever last` if all must be.',
        fixes: [
          { grade: 'likely', title: 'Write `, whichever first`', edits: [{ at, text: ', whichever first' }] },
          { grade: 'possible', title: 'Write `, whichever last`', edits: [{ at, text: ', whichever last' }] },
        ],
      }),
    );
  }

  /** `month on day 15`, `2 years on 1 November`, `year in April`: only then is it about marks, and not the next clause. */
  private seesCalendar(word: 'on' | 'in'): boolean {
    const { month, months, year, years, on, day } = this.v.word;
    const unit = this.sees(1, this.v.Number) ? 2 : 1;
    if (!this.sees(unit, month, months, year, years)) return false;
    if (word === 'in') return this.sees(unit + 1, this.v.word.in) && this.sees(unit + 2, this.v.Month);
    return (
      this.sees(unit + 1, on) && (this.sees(unit + 2, this.v.Number) || (this.sees(unit + 2, day) && this.sees(unit + 3, this.v.Number)))
    );
  }

  /** Integer Month */
  protected readonly dayOfMonth = this.RULE('dayOfMonth', (): MarkDayNode => {
    const number = this.CONSUME(this.v.Number);
    const month = this.SUBRULE(this.month);
    return { kind: 'mark-day', at: this.since(number), day: this.integer(number), month };
  });
}
