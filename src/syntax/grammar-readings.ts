/**
 * Grammar, a layer that may be left out: gauges and dipsticks, the bands of their readings and what follows from each.
 */
import type { GrammarLayer } from './grammar-part.js';
import { findingChoices } from './lookahead-table.js';
import type { Vocabulary } from './tokens.js';
import type { Token } from './token.js';
import type { BandNode, DipstickNode, GaugeNode, LevelNode, OutcomeNode, ReadsNode, SpanNode } from './tree.js';

type BandRule = ReadsNode['bands'][number];
type NamedBand = GaugeNode['bands'][number];

/** Reads instruments, their bands, and outcomes. */
export const readingInstruments: GrammarLayer = (below) =>
  class InstrumentGrammar extends below {
    constructor(vocabulary: Vocabulary) {
      super(vocabulary);
      this.learn(findingChoices);
    }

    /** Band: see grammar/duewright.ebnf. */
    private readonly band = this.RULE('band', (): BandNode =>
      this.OR<BandNode>({
        ERR_MSG: 'a band such as `below 75`, `75 to 90` or `above full`',
        DEF: [
          { ALT: () => this.SUBRULE(this.belowBand) },
          { ALT: () => this.SUBRULE(this.aboveBand) },
          { ALT: () => this.SUBRULE(this.fromBand) },
          { GATE: () => this.sees(2, this.v.word.to), ALT: () => this.SUBRULE(this.upToBand) },
          { ALT: () => this.SUBRULE(this.plainBand) },
        ],
      }),
    );

    private readonly belowBand = this.RULE('belowBand', (): BandNode => {
      const first = this.CONSUME(this.v.word.below);
      const to = this.SUBRULE(this.level);
      return { kind: 'range', at: this.since(first), fromIncluded: false, to, toIncluded: false };
    });

    private readonly upToBand = this.RULE('upToBand', (): BandNode => {
      const first = this.CONSUME(this.v.word.up);
      this.CONSUME(this.v.word.to);
      const to = this.SUBRULE(this.level);
      return { kind: 'range', at: this.since(first), fromIncluded: false, to, toIncluded: true };
    });

    private readonly aboveBand = this.RULE('aboveBand', (): BandNode => {
      const first = this.CONSUME(this.v.word.above);
      const from = this.SUBRULE(this.level);
      const to = this.OPTION(() => {
        this.CONSUME(this.v.word.to);
        return this.SUBRULE(this.level);
      });
      const open = { kind: 'range', at: this.since(first), from, fromIncluded: false } as const;
      return to === undefined ? { ...open, toIncluded: false } : { ...open, to, toIncluded: true };
    });

    private readonly fromBand = this.RULE('fromBand', (): BandNode => {
      const first = this.CONSUME(this.v.word.from);
      const from = this.SUBRULE(this.level);
      return { kind: 'range', at: this.since(first), from, fromIncluded: true, toIncluded: false };
    });

    private readonly plainBand = this.RULE('plainBand', (): BandNode => {
      const first = this.LA(1);
      const from = this.SUBRULE(this.level);
      const upper = this.OPTION(() => this.SUBRULE(this.upperEdge));
      if (upper !== undefined) {
        return { kind: 'range', at: this.since(first), from, fromIncluded: true, to: upper.to, toIncluded: upper.included };
      }
      return this.lone(first, from);
    });

    private readonly upperEdge = this.RULE('upperEdge', (): { readonly to: LevelNode; readonly included: boolean } => {
      this.CONSUME(this.v.word.to);
      const included = this.OPTION(() => this.CONSUME(this.v.word.below)) === undefined;
      return { to: this.SUBRULE(this.level), included };
    });

    /** A bare name is a band that the gauge declares; a bare number is the band that holds just that value. */
    private lone(first: Token, level: LevelNode): BandNode {
      if (level.kind === 'name') return { kind: 'band-name', at: level.at, name: level };
      return { kind: 'range', at: this.since(first), from: level, fromIncluded: true, to: level, toIncluded: true };
    }

    /** Outcome ::= ( "fine" | "caution" Text | "hold" Text ) ( "then" Name ( "now" | "within" Span ) )* */
    protected override readonly outcome = this.RULE('outcome', (): OutcomeNode => {
      const first = this.LA(1);
      const verdict = this.OR<Pick<OutcomeNode, 'verdict' | 'text'>>({
        ERR_MSG: 'what follows from it: `fine`, `caution "…"` or `hold "…"`',
        DEF: [
          { ALT: () => (this.CONSUME(this.v.word.fine), { verdict: 'fine' }) },
          { ALT: () => (this.CONSUME(this.v.word.caution), { verdict: 'caution', text: this.SUBRULE(this.saying) }) },
          { ALT: () => (this.CONSUME(this.v.word.hold), { verdict: 'hold', text: this.SUBRULE(this.saying) }) },
        ],
      });
      const then: OutcomeNode['then'][number][] = [];
      this.MANY(() => then.push(this.SUBRULE(this.consequence)));
      return { kind: 'outcome', at: this.since(first), ...verdict, then };
    });

    private readonly consequence = this.RULE('consequence', (): OutcomeNode['then'][number] => {
      const first = this.CONSUME(this.v.word.then);
      const task = this.SUBRULE(this.name);
      const within = this.OR([
        { ALT: () => (this.CONSUME(this.v.word.now), undefined) },
        { ALT: () => (this.CONSUME(this.v.word.within), this.SUBRULE(this.span)) },
      ]);
      return { at: this.since(first), task, ...(within === undefined ? {} : { within }) };
    });

    /** Band Outcome */
    private readonly bandRule = this.RULE('bandRule', (): BandRule => {
      const first = this.LA(1);
      const band = this.SUBRULE(this.band);
      const outcome = this.SUBRULE(this.outcome);
      return { kind: 'band-rule', at: this.since(first), band, outcome };
    });

    /** Reads ::= "reads" Name ( Band Outcome )* */
    protected override readonly reads = this.RULE('reads', (): ReadsNode => {
      const first = this.CONSUME(this.v.word.reads);
      const instrument = this.SUBRULE(this.name);
      const bands = this.SUBRULE(this.bandRules);
      return { kind: 'reads', at: this.since(first), instrument, bands };
    });

    private readonly bandRules = this.RULE('bandRules', (): readonly BandRule[] => {
      if (this.RECORDING_PHASE) this.MANY(() => this.SUBRULE(this.bandRule));
      return this.series({
        opens: () => this.seesBand(),
        ends: () => !this.seesBand(),
        resumes: () => this.seesBandAgain(),
        read: () => this.SUBRULE(this.bandRule),
      });
    });

    /** A name here can only be a level or a named band: clauses begin with reserved words. */
    private seesBand(): boolean {
      return this.sees(1, this.v.word.below, this.v.word.above, this.v.word.from, this.v.Number) || this.seesA(1, this.v.Name);
    }

    private seesBandAgain(): boolean {
      return this.sees(1, this.v.word.below, this.v.word.above) || (this.sees(1, this.v.word.up) && this.sees(2, this.v.word.to));
    }

    /** Gauge ::= "gauge" Name Text "reads" Unit Fresh? ( Name Band )* */
    protected override readonly gauge = this.RULE('gauge', (): GaugeNode => {
      const first = this.CONSUME(this.v.word.gauge);
      const lost = this.lost;
      const name = this.SUBRULE(this.name);
      const title = this.SUBRULE(this.title, { ARGS: [name] });
      this.CONSUME(this.v.word.reads);
      const unit = this.unitNode(this.CONSUME(this.v.Unit));
      const fresh = this.OPTION({ GATE: () => this.sees(2, this.v.word.for), DEF: () => this.SUBRULE(this.fresh) });
      this.namesFollow = true;
      const bands = this.SUBRULE(this.namedBands);
      this.namesFollow = false;
      return {
        kind: 'gauge',
        at: this.since(first),
        name,
        title,
        unit,
        ...(fresh === undefined ? {} : { fresh }),
        bands,
        ...this.partialSince(lost),
      };
    });

    private readonly namedBands = this.RULE('namedBands', (): readonly NamedBand[] => {
      if (this.RECORDING_PHASE) this.MANY(() => this.SUBRULE(this.namedBand));
      return this.series({
        opens: () => this.seesA(1, this.v.Name),
        ends: () => !this.seesA(1, this.v.Name),
        resumes: () => this.seesA(1, this.v.Name) && this.sees(2, this.v.Number, this.v.word.above, this.v.word.below, this.v.word.from),
        read: () => this.SUBRULE(this.namedBand),
      });
    });

    private readonly namedBand = this.RULE('namedBand', (): NamedBand => {
      const first = this.CONSUME(this.v.Name);
      const band = this.SUBRULE(this.band);
      return { kind: 'named-band', at: this.since(first), name: this.nameNode(first), band };
    });

    /** Fresh ::= "fresh" "for" Span */
    private readonly fresh = this.RULE('fresh', (): SpanNode => {
      this.CONSUME(this.v.word.fresh);
      this.CONSUME(this.v.word.for);
      return this.SUBRULE(this.span);
    });

    /** Dipstick ::= "dipstick" Name Text "low" "to" "full" "is" Quantity Fresh? */
    protected override readonly dipstick = this.RULE('dipstick', (): DipstickNode => {
      const first = this.CONSUME(this.v.word.dipstick);
      const name = this.SUBRULE(this.name);
      const title = this.SUBRULE(this.title, { ARGS: [name] });
      this.CONSUME(this.v.word.low);
      this.CONSUME(this.v.word.to);
      this.CONSUME(this.v.word.full);
      this.CONSUME(this.v.word.is);
      const range = this.SUBRULE(this.quantity);
      const fresh = this.OPTION(() => this.SUBRULE(this.fresh));
      return { kind: 'dipstick', at: this.since(first), name, title, range, ...(fresh === undefined ? {} : { fresh }) };
    });
  };
