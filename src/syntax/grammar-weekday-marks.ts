/**
 * Grammar, a layer that may be left out: marks by the week.
 */
import type { GrammarLayer } from './grammar-part.js';
import { weekdayMarkChoices } from './lookahead-table.js';
import type { Vocabulary } from './tokens.js';
import type { DateNode, LimitNode, NumberNode, PlacedWeekdayNode, UnitNode } from './tree.js';

/** Reads the first Monday of each month, and every second Monday. */
export const readingWeekdayMarks: GrammarLayer = (below) =>
  class WeekdayMarkGrammar extends below {
    constructor(vocabulary: Vocabulary) {
      super(vocabulary);
      this.learn(weekdayMarkChoices);
    }

    /** Integer? CalendarUnit "on" PlacedDay ( ( "," | "and" ) PlacedDay )* | Integer "weeks" "on" Weekday ( ( "," | "and" ) Weekday )* "from" Date */
    protected override readonly weekdayMarks = this.RULE('weekdayMarks', (): LimitNode => {
      const first = this.LA(1);
      const often = this.SUBRULE(this.howOften);
      this.CONSUME(this.v.word.on);
      const day = this.LA(1);
      const isPlaced = this.sees(1, this.v.word.the);
      const days = [this.SUBRULE(this.dayByWeek)];
      this.MANY({
        GATE: () => this.sees(2, isPlaced ? this.v.word.the : this.v.Weekday),
        DEF: () => {
          this.OR([{ ALT: () => this.CONSUME(this.v.Comma) }, { ALT: () => this.CONSUME(this.v.word.and) }]);
          days.push(this.SUBRULE(this.dayByWeek));
        },
      });
      const from = this.OPTION({ GATE: () => !isPlaced, DEF: () => this.SUBRULE(this.fromDate) });
      const byWeek = { kind: 'by-week', at: this.since(day), days, ...(from === undefined ? {} : { from }) } as const;
      return {
        kind: 'calendar-marks',
        at: this.since(first),
        ...often,
        days: [],
        whereItExists: false,
        byWeek,
      };
    });

    /** Integer ( CalendarUnit | "weeks" ) | CalendarUnit */
    private readonly howOften = this.RULE('howOften', (): { readonly number?: NumberNode; readonly unit: UnitNode } =>
      this.OR<{ readonly number?: NumberNode; readonly unit: UnitNode }>([
        { ALT: () => ({ number: this.integer(this.CONSUME(this.v.Number)), unit: this.unitNode(this.CONSUME(this.v.Unit)) }) },
        { ALT: () => ({ unit: this.SUBRULE(this.calendarUnit) }) },
      ]),
    );

    /** "from" Date */
    private readonly fromDate = this.RULE('fromDate', (): DateNode => {
      this.CONSUME(this.v.word.from);
      return this.dateNode(this.CONSUME(this.v.Date));
    });

    /** PlacedDay | Weekday */
    private readonly dayByWeek = this.RULE('dayByWeek', (): PlacedWeekdayNode =>
      this.OR<PlacedWeekdayNode>([
        { ALT: () => this.SUBRULE(this.placedDay) },
        {
          ALT: () => {
            const weekday = this.weekdayNode(this.CONSUME(this.v.Weekday));
            return { kind: 'placed-weekday', at: weekday.at, weekday };
          },
        },
      ]),
    );

    /** PlacedDay ::= "the" ( "first" | "second" | "third" | "fourth" | "last" ) Weekday ( "of" Month )? */
    private readonly placedDay = this.RULE('placedDay', (): PlacedWeekdayNode => {
      const the = this.CONSUME(this.v.word.the);
      const nth = this.SUBRULE(this.ordinal);
      const weekday = this.weekdayNode(this.CONSUME(this.v.Weekday));
      const month = this.OPTION(() => (this.CONSUME(this.v.word.of), this.SUBRULE(this.month)));
      return { kind: 'placed-weekday', at: this.since(the), nth, weekday, ...(month === undefined ? {} : { month }) };
    });

    private readonly ordinal = this.RULE('ordinal', (): NonNullable<PlacedWeekdayNode['nth']> =>
      this.OR<NonNullable<PlacedWeekdayNode['nth']>>({
        ERR_MSG: '`first`, `second`, `third`, `fourth` or `last`',
        DEF: [
          { ALT: () => (this.CONSUME(this.v.word.first), 1) },
          { ALT: () => (this.CONSUME(this.v.word.second), 2) },
          { ALT: () => (this.CONSUME(this.v.word.third), 3) },
          { ALT: () => (this.CONSUME(this.v.word.fourth), 4) },
          { ALT: () => (this.CONSUME(this.v.word.last), 'last') },
        ],
      }),
    );
  };
