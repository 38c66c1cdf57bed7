/**
 * Grammar, fifth layer: the clauses of a task that are neither intervals nor readings.
 */
import { SeriesGrammar } from './series.js';
import type {
  AllowNode, CautionNode, DependenceNode, HoldNode, KeptNode, LeadNode, MarginNode, ProcedureNode, ReasonNode, RecordNode, SignalWord, SiteNode, SourceNode, TextNode, TightenNode, ToolsNode, UsesNode, WithNode,
} from './tree.js'; // prettier-ignore

/** Reads the clauses about the work itself; steps share several of them. */
export abstract class ClauseGrammar extends SeriesGrammar {
  /** Allow ::= "allow" Margin ( "early" | "late" ) ( "," Margin ( "early" | "late" ) )* */
  protected readonly allow = this.RULE('allow', (): AllowNode => {
    const first = this.CONSUME(this.v.word.allow);
    const sides: AllowNode['sides'][number][] = [];
    this.AT_LEAST_ONE_SEP({
      SEP: this.v.Comma,
      DEF: () => {
        const margin = this.SUBRULE(this.margin);
        const side = this.OR<'early' | 'late'>([
          { ALT: () => (this.CONSUME(this.v.word.early), 'early') },
          { ALT: () => (this.CONSUME(this.v.word.late), 'late') },
        ]);
        sides.push({ margin, side });
      },
    });
    return { kind: 'allow', at: this.since(first), sides };
  });

  /** Lead ::= "lead" Margin ( "," Margin )* */
  protected readonly lead = this.RULE('lead', (): LeadNode => {
    const first = this.CONSUME(this.v.word.lead);
    const margins: MarginNode[] = [];
    this.AT_LEAST_ONE_SEP({ SEP: this.v.Comma, DEF: () => margins.push(this.SUBRULE(this.margin)) });
    return { kind: 'lead', at: this.since(first), margins };
  });

  /** Hold ::= "hold" ( "when" "overdue" | Margin "late" ) Text */
  protected readonly hold = this.RULE('hold', (): HoldNode => {
    const first = this.CONSUME(this.v.word.hold);
    const margin = this.OR<MarginNode | undefined>({
      ERR_MSG: '`when overdue` or a margin such as `20 h late`',
      DEF: [
        { ALT: () => (this.CONSUME(this.v.word.when), this.CONSUME(this.v.word.overdue), undefined) },
        {
          ALT: () => {
            const late = this.SUBRULE(this.margin);
            this.CONSUME(this.v.word.late);
            return late;
          },
        },
      ],
    });
    const text = this.SUBRULE(this.saying);
    return { kind: 'hold', at: this.since(first), ...(margin === undefined ? {} : { margin }), text };
  });

  protected readonly takes = this.RULE('takes', (): SiteNode => {
    const first = this.CONSUME(this.v.word.takes);
    const time = this.SUBRULE(this.quantity);
    return { kind: 'takes', at: this.since(first), time };
  });

  protected readonly placeAt = this.RULE('placeAt', (): SiteNode => {
    const first = this.CONSUME(this.v.word.at);
    const place = this.SUBRULE(this.name);
    return { kind: 'place-at', at: this.since(first), place };
  });

  protected readonly under = this.RULE('under', (): SiteNode => {
    const first = this.CONSUME(this.v.word.under);
    const part = this.SUBRULE(this.name);
    const meant = this.OPTION(() => {
      this.CONSUME(this.v.word.meant);
      return this.SUBRULE(this.text);
    });
    return { kind: 'under', at: this.since(first), part, ...(meant === undefined ? {} : { meant }) };
  });

  protected readonly with = this.RULE('with', (): WithNode => {
    const first = this.CONSUME(this.v.word.with);
    const condition = this.SUBRULE(this.condition);
    return { kind: 'with', at: this.since(first), condition };
  });

  /** Uses ::= "uses" UseItem ( "," UseItem )* */
  protected readonly uses = this.RULE('uses', (): UsesNode => {
    const first = this.CONSUME(this.v.word.uses);
    const items: UsesNode['items'][number][] = [];
    this.AT_LEAST_ONE_SEP({ SEP: this.v.Comma, DEF: () => items.push(this.SUBRULE(this.useItem)) });
    return { kind: 'uses', at: this.since(first), items };
  });

  /** UseItem ::= Number Unit? Name */
  private readonly useItem = this.RULE('useItem', (): UsesNode['items'][number] => {
    const first = this.CONSUME(this.v.Number);
    const unit = this.OPTION({
      GATE: () => this.sees(1, this.v.UnitSign, this.v.Percent) || this.seesA(2, this.v.Name),
      DEF: () => this.unitNode(this.CONSUME(this.v.Unit)),
    });
    const supply = this.SUBRULE(this.name);
    return { at: this.since(first), number: this.numberNode(first), ...(unit === undefined ? {} : { unit }), supply };
  });

  /** Tools ::= "needs" Text ( "," Text )* */
  protected readonly tools = this.RULE('tools', (): ToolsNode => {
    const first = this.CONSUME(this.v.word.needs);
    const tools: TextNode[] = [];
    this.AT_LEAST_ONE_SEP({ SEP: this.v.Comma, DEF: () => tools.push(this.SUBRULE(this.text)) });
    return { kind: 'needs', at: this.since(first), tools };
  });

  /** Tighten ::= "tighten" ( Text | Name ) "to" Quantity */
  protected readonly tighten = this.RULE('tighten', (): TightenNode => {
    const first = this.CONSUME(this.v.word.tighten);
    const what = this.OR<TightenNode['what']>([{ ALT: () => this.SUBRULE(this.text) }, { ALT: () => this.SUBRULE(this.name) }]);
    this.CONSUME(this.v.word.to);
    const torque = this.SUBRULE(this.quantity);
    return { kind: 'tighten', at: this.since(first), what, torque };
  });

  /** "do" Text | "reason" Text | "source" Text */
  protected readonly wording = this.RULE('wording', (): ProcedureNode | ReasonNode | SourceNode => {
    const first = this.LA(1);
    const kind = this.OR<'do' | 'reason' | 'source'>([
      { ALT: () => (this.CONSUME(this.v.word.do), 'do') },
      { ALT: () => (this.CONSUME(this.v.word.reason), 'reason') },
      { ALT: () => (this.CONSUME(this.v.word.source), 'source') },
    ]);
    const text = this.SUBRULE(this.saying);
    return { kind, at: this.since(first), text };
  });

  /** Signal ::= "danger" | "warning" | "caution" | "notice" */
  protected readonly signal = this.RULE('signal', (): SignalWord => {
    const { danger, warning, caution, notice } = this.v.word;
    return this.OR<SignalWord>([
      { ALT: () => (this.CONSUME(danger), 'danger') },
      { ALT: () => (this.CONSUME(warning), 'warning') },
      { ALT: () => (this.CONSUME(caution), 'caution') },
      { ALT: () => (this.CONSUME(notice), 'notice') },
    ]);
  });

  /** Caution ::= Signal Text | "beware" Name ( "," Name )* | "calls" "for" "qualified" "mechanic" */
  protected readonly caution = this.RULE('caution', (): CautionNode => {
    const first = this.LA(1);
    return this.OR<CautionNode>([
      {
        ALT: () => {
          const signal = this.SUBRULE(this.signal);
          const text = this.SUBRULE(this.saying);
          return { kind: 'signal', at: this.since(first), signal, text };
        },
      },
      {
        ALT: () => {
          this.CONSUME(this.v.word.beware);
          const hazards = this.SUBRULE(this.names);
          return { kind: 'beware', at: this.since(first), hazards };
        },
      },
      {
        ALT: () => {
          this.CONSUME(this.v.word.calls);
          this.CONSUME(this.v.word.for);
          this.CONSUME(this.v.word.qualified);
          this.CONSUME(this.v.word.mechanic);
          return { kind: 'qualified', at: this.since(first) };
        },
      },
    ]);
  });

  /** Record ::= "record" "kept" Kept ( ( "or" Kept )+ ","? "whichever" ( "first" | "last" ) )? */
  protected readonly record = this.RULE('record', (): RecordNode => {
    const first = this.CONSUME(this.v.word.record);
    this.CONSUME(this.v.word.kept);
    const terms: KeptNode[] = [];
    this.AT_LEAST_ONE_SEP({ SEP: this.v.word.or, DEF: () => terms.push(this.SUBRULE(this.kept)) });
    const written = this.since(first);
    const mode = this.OPTION({ GATE: () => this.seesWhichever(), DEF: () => this.SUBRULE(this.whichever) });
    if (mode === undefined && terms.length > 1 && !this.RECORDING_PHASE) this.missWhichever(written);
    return { kind: 'record', at: this.since(first), ...(mode === undefined ? {} : { mode }), terms };
  });

  /** Kept ::= Span | "until" ( "mended" | "done" "again" ) | "for" "life" */
  private readonly kept = this.RULE('kept', (): KeptNode => {
    const first = this.LA(1);
    return this.OR<KeptNode>({
      ERR_MSG: 'how long: `12 months`, `until mended`, `until done again` or `for life`',
      DEF: [
        { ALT: () => this.SUBRULE(this.span) },
        {
          ALT: () => {
            this.CONSUME(this.v.word.until);
            const kind = this.SUBRULE(this.keptUntil);
            return { kind, at: this.since(first) };
          },
        },
        {
          ALT: () => {
            this.CONSUME(this.v.word.for);
            this.CONSUME(this.v.word.life);
            return { kind: 'life', at: this.since(first) };
          },
        },
      ],
    });
  });

  private readonly keptUntil = this.RULE('keptUntil', (): 'mended' | 'repeated' =>
    this.OR<'mended' | 'repeated'>([
      { ALT: () => (this.CONSUME(this.v.word.mended), 'mended') },
      { ALT: () => (this.CONSUME(this.v.word.done), this.CONSUME(this.v.word.again), 'repeated') },
    ]),
  );

  /** Dependence: "covers", "restarts", "follows", "mends" or "met" "by", then names. */
  protected readonly dependence = this.RULE('dependence', (): DependenceNode => {
    const first = this.LA(1);
    const kind = this.OR<DependenceNode['kind']>([
      { ALT: () => (this.CONSUME(this.v.word.covers), 'covers') },
      { ALT: () => (this.CONSUME(this.v.word.restarts), 'restarts') },
      { ALT: () => (this.CONSUME(this.v.word.follows), 'follows') },
      { ALT: () => (this.CONSUME(this.v.word.mends), 'mends') },
      { ALT: () => (this.CONSUME(this.v.word.met), this.CONSUME(this.v.word.by), 'met-by') },
    ]);
    const names = this.SUBRULE(this.names);
    return { kind, at: this.since(first), names };
  });
}
