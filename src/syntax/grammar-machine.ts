/**
 * Grammar, ninth layer: what the machine has.
 */
import { TaskGrammar } from './grammar-tasks.js';
import type { AttachmentNode, DutyNode, EventNode, HazardNode, MeterNode, StopNode, SupplyNode } from './tree.js';

/** Reads meters, duties, supplies and the like. */
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

  /** Duty ::= "duty" Name Text */
  protected readonly duty = this.RULE('duty', (): DutyNode => {
    const first = this.CONSUME(this.v.word.duty);
    const name = this.SUBRULE(this.name);
    const title = this.SUBRULE(this.title, { ARGS: [name] });
    return { kind: 'duty', at: this.since(first), name, title };
  });

  /** Event ::= "event" Name Text ( "on" Date )? */
  protected readonly event = this.RULE('event', (): EventNode => {
    const first = this.CONSUME(this.v.word.event);
    const name = this.SUBRULE(this.name);
    const title = this.SUBRULE(this.title, { ARGS: [name] });
    const on = this.OPTION(() => {
      this.CONSUME(this.v.word.on);
      return this.dateNode(this.CONSUME(this.v.Date));
    });
    return { kind: 'event', at: this.since(first), name, title, ...(on === undefined ? {} : { on }) };
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

  /** Stop ::= "stop" Name Text "when" Condition */
  protected readonly stop = this.RULE('stop', (): StopNode => {
    const first = this.CONSUME(this.v.word.stop);
    const name = this.SUBRULE(this.name);
    const title = this.SUBRULE(this.title, { ARGS: [name] });
    this.CONSUME(this.v.word.when);
    const condition = this.SUBRULE(this.condition);
    return { kind: 'stop', at: this.since(first), name, title, condition };
  });
}
