/**
 * Grammar, first layer: numbers with units, spans, percentages, months.
 */
import type { Token } from './token.js';
import { diagnose } from '../diagnostics/catalogue-entry.js';
import { syntaxCodes } from '../diagnostics/codes/syntax.js';
import { monthNumber, weekdayNumber } from '../values/calendar.js';
import { findUnit } from '../values/units.js';
import { GrammarBase } from './grammar-base.js';
import type {
  ConditionNode,
  StanceItemNode,
  LevelNode,
  MonthNode,
  NameNode,
  NumberNode,
  PercentNode,
  QuantityNode,
  SerialRangeNode,
  SpanNode,
  TextNode,
  UnitNode,
  WeekdayNode,
} from './tree.js';

/** Reads what is counted and measured. */
export abstract class QuantityGrammar extends GrammarBase {
  /** True inside gauges and examples, where a name may follow a level (`normal 75 to 90 high above 97`): there only known units are units. */
  protected namesFollow = false;

  /** Condition: see grammar-conditions.ts. */
  protected readonly condition: () => ConditionNode = this.without('conditions');

  /** Name */
  protected readonly name = this.RULE('name', (): NameNode => this.nameNode(this.CONSUME(this.v.Name)));

  /** Name ( "," Name )* */
  protected readonly names = this.RULE('names', (): readonly NameNode[] => {
    const names: NameNode[] = [];
    this.AT_LEAST_ONE_SEP({ SEP: this.v.Comma, DEF: () => names.push(this.nameNode(this.CONSUME(this.v.Name))) });
    return names;
  });

  /** Text */
  protected readonly text = this.RULE('text', (): TextNode => this.textNode(this.CONSUME(this.v.Text)));

  /** Quantity ::= Number Unit */
  protected readonly quantity = this.RULE('quantity', (): QuantityNode => {
    const number = this.CONSUME(this.v.Number);
    const unit = this.CONSUME(this.v.Unit);
    return { kind: 'quantity', at: this.since(number), number: this.numberNode(number), unit: this.unitNode(unit) };
  });

  /** Percent ::= Number "%" */
  protected readonly percent = this.RULE('percent', (): PercentNode => {
    const number = this.CONSUME(this.v.Number);
    this.CONSUME(this.v.Percent);
    return { kind: 'percent', at: this.since(number), number: this.numberNode(number) };
  });

  /** Span ::= Number ( "calendar" CalendarPeriods | Unit ) ( ( "less" | "plus" ) Integer ( "day" | "days" ) | "of" ( Name | "work" ( "in" Name )? ) )? */
  protected readonly span = this.RULE('span', (): SpanNode => {
    const number = this.CONSUME(this.v.Number);
    const unit = this.SUBRULE(this.spanUnit);
    const beyond = this.OPTION({ GATE: () => this.seesDays(1), DEF: () => this.SUBRULE(this.daysBeyond) });
    const of = this.OPTION1({ GATE: () => beyond === undefined, DEF: () => this.SUBRULE(this.measured) });
    return {
      kind: 'span',
      at: this.since(number),
      number: this.numberNode(number),
      unit,
      ...beyond,
      ...(of === undefined ? {} : { of }),
    };
  });

  /** ( "less" | "plus" ) Integer ( "day" | "days" ) */
  private readonly daysBeyond = this.RULE('daysBeyond', (): Pick<SpanNode, 'less' | 'plus'> => {
    const isLess = this.SUBRULE(this.lessOrPlus) === 'less';
    const number = this.integer(this.CONSUME(this.v.Number));
    this.OR([{ ALT: () => this.CONSUME(this.v.word.day) }, { ALT: () => this.CONSUME(this.v.word.days) }]);
    return isLess ? { less: number } : { plus: number };
  });

  private readonly lessOrPlus = this.RULE('lessOrPlus', (): 'less' | 'plus' =>
    this.OR<'less' | 'plus'>([
      { ALT: () => (this.CONSUME(this.v.word.less), 'less') },
      { ALT: () => (this.CONSUME(this.v.word.plus), 'plus') },
    ]),
  );

  private readonly spanUnit = this.RULE('spanUnit', (): UnitNode => {
    const first = this.CONSUME(this.v.Unit);
    if (!this.RECORDING_PHASE && first.tokenType !== this.v.word.calendar) return this.unitNode(first);
    return this.OR([
      {
        GATE: () => this.sees(0, this.v.word.calendar) && (this.seesPeriods(1) || this.seesDaysOrWeeks()),
        ALT: () => this.calendarPeriods(first, this.CONSUME(this.v.Unit)),
      },
      { ALT: () => this.unitNode(first) },
    ]);
  });

  private readonly measured = this.RULE('measured', (): NonNullable<SpanNode['of']> => {
    this.CONSUME(this.v.word.of);
    return this.OR<NonNullable<SpanNode['of']>>([
      {
        ALT: () => {
          const work = this.CONSUME(this.v.word.work);
          const duty = this.OPTION({ GATE: () => !this.seesInDuty(), DEF: () => this.SUBRULE(this.inName) });
          return { kind: 'work', at: this.since(work), ...(duty === undefined ? {} : { duty }) };
        },
      },
      { ALT: () => ({ kind: 'meter', name: this.SUBRULE(this.name) }) },
    ]);
  });

  /** "in" Name */
  protected readonly inName = this.RULE('inName', (): NameNode => {
    this.CONSUME(this.v.word.in);
    return this.SUBRULE(this.name);
  });

  /** Level ::= Quantity | Number | Name */
  protected readonly level = this.RULE('level', (): LevelNode =>
    this.OR<LevelNode>([{ ALT: () => this.SUBRULE(this.numericLevel) }, { ALT: () => this.SUBRULE(this.name) }]),
  );

  private readonly numericLevel = this.RULE('numericLevel', (): LevelNode => {
    const token = this.CONSUME(this.v.Number);
    const number = this.numberNode(token);
    const unit = this.OPTION({ GATE: () => this.seesLevelUnit(), DEF: () => this.unitNode(this.CONSUME(this.v.Unit)) });
    return unit === undefined ? number : { kind: 'quantity', at: this.since(token), number, unit };
  });

  /** Integer "to" Integer, after "serial". */
  protected readonly serialRange = this.RULE('serialRange', (): SerialRangeNode => {
    const serial = this.CONSUME(this.v.word.serial);
    const from = this.integer(this.CONSUME(this.v.Number));
    this.CONSUME(this.v.word.to);
    const to = this.integer(this.CONSUME(this.v.Number));
    return { kind: 'serial-range', at: this.since(serial), from, to };
  });

  protected readonly month = this.RULE('month', (): MonthNode => {
    const token = this.CONSUME(this.v.Month);
    return { kind: 'month', at: this.spanOf(token), month: monthNumber(token.image) ?? 0 };
  });

  protected weekdayNode(token: Token): WeekdayNode {
    return { kind: 'weekday', at: this.spanOf(token), weekday: weekdayNumber(token.image) ?? 0 };
  }

  protected unitNode(token: Token): UnitNode {
    return { kind: 'unit', at: this.spanOf(token), text: token.image };
  }

  /** A number without sign and point; another one is read all the same, and told. */
  protected integer(token: Token): NumberNode {
    if (!this.RECORDING_PHASE && !/^\d+$/.test(token.image)) {
      this.pending.push(
        diagnose(syntaxCodes.numberForm, { message: `A whole number belongs here, not \`${token.image}\`.`, at: this.spanOf(token) }),
      );
    }
    return this.numberNode(token);
  }

  private calendarPeriods(first: Token, second: Token): UnitNode {
    return { kind: 'unit', at: this.reach(this.spanOf(first), this.spanOf(second)), text: `${first.image} ${second.image}` };
  }

  /** The place after the span that begins at the n-th token from here. */
  protected afterSpan(n: number): number {
    const { v } = this;
    const unit = this.sees(n + 1, v.word.calendar) && this.seesPeriods(n + 2) ? n + 3 : n + 2;
    if (this.seesDays(unit)) return unit + 3;
    if (!this.sees(unit, v.word.of)) return unit;
    return this.sees(unit + 1, v.word.work) && this.sees(unit + 2, v.word.in) && !this.sees(unit + 4, v.word.every) ? unit + 4 : unit + 2;
  }

  /** `in dusty every 50 h` is a clause of its own, unless what follows `every` is no plain span and so can only be the next clause. */
  private seesInDuty(): boolean {
    const { v } = this;
    if (!this.sees(3, v.word.every) || !this.sees(4, v.Number)) return false;
    const next = this.afterSpan(4);
    if (this.sees(next, v.word.on))
      return !this.sees(next + 1, v.Number) && !(this.sees(next + 1, v.word.day) && this.sees(next + 2, v.Number));
    return !this.sees(next, v.word.or) && !(this.sees(next, v.word.in) && this.sees(next + 1, v.Month));
  }

  /** What can follow a unit in a span, be it %, but not a share of one. */
  protected seesRestOfSpan(n: number): boolean {
    return this.seesDays(n) || (this.sees(n, this.v.word.of) && this.sees(n + 1, this.v.Name, this.v.word.work));
  }

  /** `less 1 day`, `plus 15 days`, from the n-th token on. */
  protected seesDays(n: number): boolean {
    return (
      this.sees(n, this.v.word.less, this.v.word.plus) &&
      this.sees(n + 1, this.v.Number) &&
      this.sees(n + 2, this.v.word.day, this.v.word.days)
    );
  }

  /** What can follow `calendar` in a span. */
  private seesPeriods(n: number): boolean {
    const { word } = this.v;
    return this.sees(n, word.months, word.month, word.quarters, word.quarter, word['half-years'], word['half-year'], word.years, word.year);
  }

  /** Read with their `calendar`, so that one mistake is told once: there are no such units. */
  private seesDaysOrWeeks(): boolean {
    return /^(?:day|week)s?$/.test(this.LA(1).image);
  }

  /** A unit is optional in a level, so what follows has to tell a unit from the name that begins the next band or act. */
  private seesLevelUnit(): boolean {
    const next = this.LA(1);
    const { v } = this;
    if (next.tokenType === v.UnitSign || next.tokenType === v.Percent) return true;
    if (findUnit(next.image) === null) return !this.namesFollow && next.tokenType === v.Name;
    return !(this.namesFollow && this.sees(2, v.Number, v.word.above, v.word.below, v.word.from, v.word.reads));
  }

  /** StanceItem ::= Name "is"? Word */
  protected readonly stanceItem = this.RULE('stanceItem', (): StanceItemNode => {
    const part = this.CONSUME(this.v.Name);
    this.OPTION(() => this.CONSUME(this.v.word.is));
    const position = this.CONSUME(this.v.Position);
    return { kind: 'stance-item', at: this.since(part), part: this.nameNode(part), position: this.nameNode(position) };
  });

  /** StanceItem ( "," StanceItem )* */
  protected readonly stance = this.RULE('stance', (): readonly StanceItemNode[] => {
    const items: StanceItemNode[] = [];
    this.AT_LEAST_ONE_SEP({ SEP: this.v.Comma, DEF: () => items.push(this.SUBRULE(this.stanceItem)) });
    return items;
  });
}
