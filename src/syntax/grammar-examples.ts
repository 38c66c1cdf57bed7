/**
 * Grammar, a layer that may be left out: worked examples.
 */
import type { GrammarLayer } from './grammar-part.js';
import { exampleChoices } from './lookahead-table.js';
import type { Vocabulary } from './tokens.js';
import type { ActNode, BecauseNode, ExampleLineNode, ExampleNode, ExpectNode, NameNode, PointNode } from './tree.js';

type Outing = Extract<ActNode, { readonly kind: 'act-outing' }>;
type State = Extract<ExpectNode, { readonly kind: 'expect-task' }>['state'];

/** Reads worked examples. */
export const readingExamples: GrammarLayer = (below) =>
  class ExampleGrammar extends below {
    constructor(vocabulary: Vocabulary) {
      super(vocabulary);
      this.learn(exampleChoices);
    }

    /** Example ::= "example" Text ExampleLine* */
    protected override readonly example = this.RULE('example', (): ExampleNode => {
      const first = this.CONSUME(this.v.word.example);
      const title = this.SUBRULE(this.text);
      this.namesFollow = true;
      const lines = this.SUBRULE(this.exampleLines);
      this.namesFollow = false;
      return { kind: 'example', at: this.since(first), title, lines };
    });

    private readonly exampleLines = this.RULE('exampleLines', (): readonly ExampleLineNode[] => {
      if (this.RECORDING_PHASE) this.MANY(() => this.SUBRULE(this.exampleLine));
      return this.series({
        opens: () => this.sees(1, this.v.Date),
        ends: () => this.seesDeclaration(),
        resumes: () => this.sees(1, this.v.Date),
        read: () => this.SUBRULE(this.exampleLine),
      });
    });

    /** ExampleLine ::= Date Time? ( Act | Expect )* */
    private readonly exampleLine = this.RULE('exampleLine', (): ExampleLineNode => {
      const first = this.CONSUME(this.v.Date);
      const time = this.OPTION(() => this.CONSUME(this.v.Time));
      const items = this.SUBRULE(this.exampleItems);
      const date = this.dateNode(first);
      return { kind: 'example-line', at: this.since(first), date, ...(time === undefined ? {} : { time: this.timeNode(time) }), items };
    });

    private readonly exampleItems = this.RULE('exampleItems', (): readonly (ActNode | ExpectNode)[] => {
      if (this.RECORDING_PHASE) this.MANY(() => this.SUBRULE(this.exampleItem));
      return this.series({
        opens: () => this.seesA(1, this.v.Name) || this.sees(1, this.v.word.expect),
        ends: () => this.sees(1, this.v.Date) || this.seesDeclaration(),
        resumes: () => this.seesAct(1),
        read: () => this.SUBRULE(this.exampleItem),
      });
    });

    private readonly exampleItem = this.RULE('exampleItem', (): ActNode | ExpectNode =>
      this.OR<ActNode | ExpectNode>([{ ALT: () => this.SUBRULE(this.expect) }, { ALT: () => this.SUBRULE(this.act) }]),
    );

    /** Act: see grammar/duewright.ebnf. A name before a number or `reads` is an instrument, whatever it is called. */
    private readonly act = this.RULE('act', (): ActNode => {
      const first = this.LA(1);
      return this.OR<ActNode>({
        ERR_MSG: 'something that happened, such as `engine 1200 h` or `done oil-change`',
        DEF: [
          { GATE: () => this.seesA(2, this.v.Number) && !this.sees(1, this.v.word.outing), ALT: () => this.SUBRULE(this.actMeter) },
          { GATE: () => this.sees(2, this.v.word.reads), ALT: () => this.SUBRULE(this.actReads) },
          {
            ALT: () => {
              this.CONSUME(this.v.word.done);
              const tasks = this.SUBRULE(this.names);
              return { kind: 'act-done', at: this.since(first), tasks };
            },
          },
          { ALT: () => this.SUBRULE(this.actOuting) },
          {
            ALT: () => (this.CONSUME(this.v.word.happens), this.ofName((event) => ({ kind: 'act-happens', at: this.since(first), event }))),
          },
          { ALT: () => this.SUBRULE(this.actOpens) },
          {
            ALT: () => (this.CONSUME(this.v.word.closes), this.ofName((defect) => ({ kind: 'act-closes', at: this.since(first), defect }))),
          },
          { ALT: () => this.SUBRULE(this.actAttach) },
          {
            ALT: () => {
              this.CONSUME(this.v.word.stands);
              const items = this.SUBRULE(this.stance);
              return { kind: 'act-stands', at: this.since(first), items };
            },
          },
          { ALT: () => this.SUBRULE(this.actStorage) },
          { ALT: () => (this.CONSUME(this.v.word.refuelled), { kind: 'act-refuelled', at: this.since(first) }) },
          {
            ALT: () => (
              this.CONSUME(this.v.word.enters),
              this.CONSUME(this.v.word.service),
              { kind: 'act-service', at: this.since(first) }
            ),
          },
          { ALT: () => this.SUBRULE(this.actStates) },
        ],
      });
    });

    private readonly actMeter = this.RULE('actMeter', (): ActNode => {
      const first = this.CONSUME(this.v.Name);
      const value = this.SUBRULE(this.quantity);
      return { kind: 'act-meter', at: this.since(first), name: this.nameNode(first), value };
    });

    private readonly actReads = this.RULE('actReads', (): ActNode => {
      const first = this.CONSUME(this.v.Name);
      this.CONSUME(this.v.word.reads);
      const level = this.SUBRULE(this.level);
      return { kind: 'act-reads', at: this.since(first), name: this.nameNode(first), level };
    });

    /** ( "outing" | "plans" "outing" ) ( Time "to" Time )? Quantity? ( "in" Name … )? ( "with" Name … )? */
    private readonly actOuting = this.RULE('actOuting', (): Outing => {
      const first = this.LA(1);
      const planned = this.OPTION(() => this.CONSUME(this.v.word.plans)) !== undefined;
      this.CONSUME(this.v.word.outing);
      const times = this.OPTION1(() => {
        const start = this.timeNode(this.CONSUME(this.v.Time));
        this.CONSUME(this.v.word.to);
        return { start, end: this.timeNode(this.CONSUME(this.v.Time)) };
      });
      const time = this.OPTION2(() => this.SUBRULE(this.quantity));
      const duties = this.OPTION3(() => (this.CONSUME(this.v.word.in), this.SUBRULE(this.names))) ?? [];
      const attachments = this.OPTION4(() => (this.CONSUME(this.v.word.with), this.SUBRULE(this.names))) ?? [];
      return { kind: 'act-outing', at: this.since(first), planned, ...times, ...(time === undefined ? {} : { time }), duties, attachments };
    });

    private readonly actOpens = this.RULE('actOpens', (): ActNode => {
      const first = this.CONSUME(this.v.word.opens);
      const defect = this.SUBRULE(this.name);
      const cls = this.OPTION({ GATE: () => !this.seesAct(1), DEF: () => this.SUBRULE(this.name) });
      return { kind: 'act-opens', at: this.since(first), defect, ...(cls === undefined ? {} : { class: cls }) };
    });

    private readonly actAttach = this.RULE('actAttach', (): ActNode => {
      const first = this.LA(1);
      const kind = this.OR<'act-attached' | 'act-detached'>([
        { ALT: () => (this.CONSUME(this.v.word.attached), 'act-attached') },
        { ALT: () => (this.CONSUME(this.v.word.detached), 'act-detached') },
      ]);
      const attachment = this.SUBRULE(this.name);
      return { kind, at: this.since(first), attachment };
    });

    private readonly actStorage = this.RULE('actStorage', (): ActNode => {
      const first = this.CONSUME(this.v.word.storage);
      const phase = this.OR<'begins' | 'ends'>([
        { ALT: () => (this.CONSUME(this.v.word.begins), 'begins') },
        { ALT: () => (this.CONSUME(this.v.word.ends), 'ends') },
      ]);
      return { kind: 'act-storage', at: this.since(first), phase };
    });

    /** "states" Name ( "at" Quantity "of" Name )? */
    private readonly actStates = this.RULE('actStates', (): ActNode => {
      const first = this.CONSUME(this.v.word.states);
      const task = this.SUBRULE(this.name);
      const known = this.OPTION({
        // `at rest` and `at work` begin what comes after the example.
        GATE: () => !this.sees(2, this.v.word.rest, this.v.word.work),
        DEF: () => {
          this.CONSUME(this.v.word.at);
          const value = this.SUBRULE(this.quantity);
          this.CONSUME(this.v.word.of);
          return { value, meter: this.SUBRULE(this.name) };
        },
      });
      return { kind: 'act-states', at: this.since(first), task, ...known };
    });

    private readonly expect = this.RULE('expect', (): ExpectNode => {
      const first = this.CONSUME(this.v.word.expect);
      return this.OR<ExpectNode>([
        {
          ALT: () => {
            this.CONSUME(this.v.word.machine);
            const verdict = this.SUBRULE(this.name);
            return { kind: 'expect-machine', at: this.since(first), verdict };
          },
        },
        {
          ALT: () => {
            const task = this.SUBRULE(this.name);
            const state = this.SUBRULE(this.state);
            const because = this.OPTION(() => (this.CONSUME(this.v.word.because), this.SUBRULE(this.because)));
            const until = this.OPTION1(() => (this.CONSUME(this.v.word.until), this.SUBRULE(this.points))) ?? [];
            return { kind: 'expect-task', at: this.since(first), task, state, ...(because === undefined ? {} : { because }), until };
          },
        },
      ]);
    });

    private readonly state = this.RULE('state', (): State => {
      const { clear, coming, due, overdue, unrecorded, unknown, resting } = this.v.word;
      return this.OR<State>([
        { ALT: () => (this.CONSUME(clear), 'clear') },
        { ALT: () => (this.CONSUME(coming), this.CONSUME(this.v.word.up), 'coming-up') },
        { ALT: () => (this.CONSUME(due), 'due') },
        { ALT: () => (this.CONSUME(overdue), 'overdue') },
        { ALT: () => (this.CONSUME(unrecorded), 'unrecorded') },
        { ALT: () => (this.CONSUME(unknown), 'unknown') },
        { ALT: () => (this.CONSUME(resting), 'resting') },
      ]);
    });

    /** Because: a limit, an occasion, a condition, or the name of what decided. */
    private readonly because = this.RULE('because', (): BecauseNode => {
      const first = this.LA(1);
      return this.OR<BecauseNode>([
        {
          GATE: () => this.seesLimit(),
          ALT: () => ((limit) => ({ kind: 'because-limit', at: this.since(first), limit }) as const)(this.SUBRULE(this.limit)),
        },
        { ALT: () => ((what) => ({ kind: 'because-occasion', at: this.since(first), what }) as const)(this.SUBRULE(this.before)) },
        { ALT: () => ((what) => ({ kind: 'because-occasion', at: this.since(first), what }) as const)(this.SUBRULE(this.within)) },
        { ALT: () => ((what) => ({ kind: 'because-occasion', at: this.since(first), what }) as const)(this.SUBRULE(this.after)) },
        { ALT: () => ((what) => ({ kind: 'because-occasion', at: this.since(first), what }) as const)(this.SUBRULE(this.on)) },
        {
          ALT: () => {
            this.CONSUME(this.v.word.when);
            const condition = this.SUBRULE(this.condition);
            return { kind: 'because-when', at: this.since(first), condition };
          },
        },
        { ALT: () => ((name) => ({ kind: 'because-name', at: name.at, name }) as const)(this.SUBRULE(this.name)) },
      ]);
    });

    /** Point ( "or" Point )* */
    private readonly points = this.RULE('points', (): readonly PointNode[] => {
      const points: PointNode[] = [];
      this.AT_LEAST_ONE_SEP({ SEP: this.v.word.or, DEF: () => points.push(this.SUBRULE(this.point)) });
      return points;
    });

    private readonly point = this.RULE('point', (): PointNode => {
      const first = this.LA(1);
      return this.OR<PointNode>([
        {
          ALT: () => {
            const date = this.dateNode(this.CONSUME(this.v.Date));
            return { kind: 'point-date', at: date.at, date };
          },
        },
        {
          ALT: () => {
            const meter = this.SUBRULE(this.name);
            const value = this.SUBRULE(this.quantity);
            return { kind: 'point-meter', at: this.since(first), meter, value };
          },
        },
      ]);
    });

    private ofName<T>(make: (name: NameNode) => T): T {
      return make(this.SUBRULE(this.name));
    }

    private timeNode(token: { readonly image: string; readonly startOffset: number }) {
      const at = { file: this.file, start: token.startOffset, end: token.startOffset + 5 };
      return { kind: 'time', at, text: token.image } as const;
    }

    private seesLimit(): boolean {
      const { v } = this;
      const w = v.word;
      if (this.sees(1, v.Number, v.Weekday)) return true;
      if (this.sees(1, w.multiple)) return this.sees(2, w.of);
      if (this.sees(1, w.look)) return this.sees(2, w.in);
      if (this.sees(1, w.more)) return this.sees(2, w.than);
      if (this.sees(1, w.calendar)) return this.sees(2, w.week, w.month, w.quarter, w['half-year'], w.year);
      return this.sees(1, w.month, w.months, w.year, w.years) && this.sees(2, w.on, w.in);
    }

    /** An act or an expectation plainly begins at the n-th token from here. */
    private seesAct(n: number): boolean {
      const { v } = this;
      const w = v.word;
      if (this.sees(n, w.expect)) return true;
      if (!this.seesA(n, v.Name)) return false;
      if (this.sees(n + 1, v.Number, w.reads)) return true;
      if (this.sees(n, w.outing, w.refuelled)) return true;
      if (this.sees(n, w.plans)) return this.sees(n + 1, w.outing);
      if (this.sees(n, w.storage)) return this.sees(n + 1, w.begins, w.ends);
      if (this.sees(n, w.enters)) return this.sees(n + 1, w.service);
      return this.sees(n, w.done, w.happens, w.opens, w.closes, w.attached, w.detached, w.stands, w.states) && this.seesA(n + 1, v.Name);
    }
  };
