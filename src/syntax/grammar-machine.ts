/**
 * Grammar, tenth layer: what the machine has.
 */
import { TaskGrammar } from './grammar-tasks.js';
import type {
  AttachmentNode,
  DefectNode,
  DipstickNode,
  DutyNode,
  EventNode,
  GaugeNode,
  HazardNode,
  MeterNode,
  SpanNode,
  StopNode,
  SupplyNode,
} from './tree.js';

type NamedBand = GaugeNode['bands'][number];
type ClassRule = DefectNode['rules'][number];
type DefectClass = DefectNode['classes'][number];

/** Reads instruments, supplies, defects and the like. */
export abstract class MachineGrammar extends TaskGrammar {
  /** Meter ::= "meter" Name Text "counts" Unit ( "from" "outings" )? */
  protected readonly meter = this.RULE('meter', (): MeterNode => {
    const first = this.CONSUME(this.v.word.meter);
    const name = this.SUBRULE(this.name);
    const title = this.SUBRULE(this.title, { ARGS: [name] });
    this.CONSUME(this.v.word.counts);
    const unit = this.unitNode(this.CONSUME(this.v.Unit));
    const fromOutings = this.OPTION(() => (this.CONSUME(this.v.word.from), this.CONSUME(this.v.word.outings), true)) ?? false;
    return { kind: 'meter', at: this.since(first), name, title, unit, fromOutings };
  });

  /** Gauge ::= "gauge" Name Text "reads" Unit Fresh? ( Name Band )* */
  protected readonly gauge = this.RULE('gauge', (): GaugeNode => {
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
  protected readonly dipstick = this.RULE('dipstick', (): DipstickNode => {
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

  /** Duty ::= "duty" Name Text */
  protected readonly duty = this.RULE('duty', (): DutyNode => {
    const first = this.CONSUME(this.v.word.duty);
    const name = this.SUBRULE(this.name);
    const title = this.SUBRULE(this.title, { ARGS: [name] });
    return { kind: 'duty', at: this.since(first), name, title };
  });

  /** Event ::= "event" Name Text */
  protected readonly event = this.RULE('event', (): EventNode => {
    const first = this.CONSUME(this.v.word.event);
    const name = this.SUBRULE(this.name);
    const title = this.SUBRULE(this.title, { ARGS: [name] });
    return { kind: 'event', at: this.since(first), name, title };
  });

  /** Attachment ::= "attachment" Name Text ( "follows" Text )? */
  protected readonly attachment = this.RULE('attachment', (): AttachmentNode => {
    const first = this.CONSUME(this.v.word.attachment);
    const name = this.SUBRULE(this.name);
    const title = this.SUBRULE(this.title, { ARGS: [name] });
    const follows = this.OPTION(() => {
      this.CONSUME(this.v.word.follows);
      return this.SUBRULE(this.text);
    });
    return { kind: 'attachment', at: this.since(first), name, title, ...(follows === undefined ? {} : { follows }) };
  });

  /** Supply ::= "supply" Name Text ( "in" Unit | "each" ) ( "known" "as" Text )? */
  protected readonly supply = this.RULE('supply', (): SupplyNode => {
    const first = this.CONSUME(this.v.word.supply);
    const name = this.SUBRULE(this.name);
    const title = this.SUBRULE(this.title, { ARGS: [name] });
    const unit = this.OR([
      { ALT: () => (this.CONSUME(this.v.word.in), this.unitNode(this.CONSUME(this.v.Unit))) },
      { ALT: () => (this.CONSUME(this.v.word.each), undefined) },
    ]);
    const knownAs = this.OPTION(() => {
      this.CONSUME(this.v.word.known);
      this.CONSUME(this.v.word.as);
      return this.SUBRULE(this.text);
    });
    return {
      kind: 'supply', at: this.since(first), name, title, ...(unit === undefined ? {} : { unit }), ...(knownAs === undefined ? {} : { knownAs }),
    }; // prettier-ignore
  });

  /** Hazard ::= "hazard" Name Signal Text */
  protected readonly hazard = this.RULE('hazard', (): HazardNode => {
    const first = this.CONSUME(this.v.word.hazard);
    const name = this.SUBRULE(this.name);
    const signal = this.SUBRULE(this.signal);
    const text = this.SUBRULE(this.text);
    return { kind: 'hazard', at: this.since(first), name, signal, text };
  });

  /** Defect ::= "defect" Name Text ( "classes" ClassItem ( "," ClassItem )* )? ( Name Outcome )* */
  protected readonly defect = this.RULE('defect', (): DefectNode => {
    const first = this.CONSUME(this.v.word.defect);
    const name = this.SUBRULE(this.name);
    const title = this.SUBRULE(this.title, { ARGS: [name] });
    const classes: DefectClass[] = [];
    this.OPTION({
      GATE: () => !this.seesOutcome(2),
      DEF: () => {
        this.CONSUME(this.v.word.classes);
        this.AT_LEAST_ONE_SEP({ SEP: this.v.Comma, DEF: () => classes.push(this.SUBRULE(this.defectClass)) });
      },
    });
    const rules = this.SUBRULE(this.classRules);
    return { kind: 'defect', at: this.since(first), name, title, classes, rules };
  });

  /** ClassItem ::= Name Text? */
  private readonly defectClass = this.RULE('defectClass', (): DefectClass => {
    const name = this.SUBRULE(this.name);
    const title = this.OPTION(() => this.SUBRULE(this.text));
    return title === undefined ? { name } : { name, title };
  });

  private readonly classRules = this.RULE('classRules', (): readonly ClassRule[] => {
    if (this.RECORDING_PHASE) this.MANY(() => this.SUBRULE(this.classRule));
    return this.series({
      opens: () => this.seesA(1, this.v.Name),
      ends: () => !this.seesA(1, this.v.Name),
      resumes: () => this.seesA(1, this.v.Name) && this.seesOutcome(2),
      read: () => this.SUBRULE(this.classRule),
    });
  });

  private readonly classRule = this.RULE('classRule', (): ClassRule => {
    const first = this.CONSUME(this.v.Name);
    const outcome = this.SUBRULE(this.outcome);
    return { kind: 'class-rule', at: this.since(first), name: this.nameNode(first), outcome };
  });

  /** Stop ::= "stop" Name Text "when" Condition */
  protected readonly stop = this.RULE('stop', (): StopNode => {
    const first = this.CONSUME(this.v.word.stop);
    const name = this.SUBRULE(this.name);
    const title = this.SUBRULE(this.title, { ARGS: [name] });
    this.CONSUME(this.v.word.when);
    const condition = this.SUBRULE(this.condition);
    return { kind: 'stop', at: this.since(first), name, title, condition };
  });

  private seesOutcome(n: number): boolean {
    const { caution, fine, hold } = this.v.word;
    return this.sees(n, fine, caution, hold);
  }
}
