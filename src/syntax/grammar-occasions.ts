/**
 * Grammar, third layer: what a task comes with – work, storage, what happens.
 */
import { PlanGrammar } from './grammar-plans.js';
import type { OccasionWhat, Round } from './tree.js';

/** Reads occasions. */
export abstract class OccasionGrammar extends PlanGrammar {
  /** Round ::= "day's" "work" | "outing" | "shift" */
  private readonly round = this.RULE('round', (): Round => {
    this.CONSUME(this.v.word.each);
    return this.OR<Round>({
      ERR_MSG: "`day's work`, `outing` or `shift`",
      DEF: [
        { ALT: () => (this.CONSUME(this.v.DaysWork), this.CONSUME(this.v.word.work), 'day') },
        { ALT: () => (this.CONSUME(this.v.word.outing), 'outing') },
        { ALT: () => (this.CONSUME(this.v.word.shift), 'shift') },
      ],
    });
  });

  /** "before" ( "each" Round | "storage" ) */
  protected readonly before = this.RULE('before', (): OccasionWhat => {
    this.CONSUME(this.v.word.before);
    return this.OR<OccasionWhat>([
      { ALT: () => ({ when: 'before', of: this.SUBRULE(this.round) }) },
      { ALT: () => (this.CONSUME(this.v.word.storage), { when: 'before', of: 'storage' }) },
    ]);
  });

  /** "after" ( "work" | "each" Round | "storage" | "attaching" Name | Integer "times" Name ) */
  protected readonly after = this.RULE('after', (): OccasionWhat => {
    this.CONSUME(this.v.word.after);
    return this.OR<OccasionWhat>([
      { ALT: () => (this.CONSUME(this.v.word.work), { when: 'after', of: 'work' }) },
      { ALT: () => ({ when: 'after', of: this.SUBRULE(this.round) }) },
      { ALT: () => (this.CONSUME(this.v.word.storage), { when: 'after', of: 'storage' }) },
      { ALT: () => (this.CONSUME(this.v.word.attaching), { when: 'after-attaching', attachment: this.SUBRULE(this.name) }) },
      {
        ALT: () => {
          const times = this.integer(this.CONSUME(this.v.Number));
          this.CONSUME(this.v.word.times);
          return { when: 'so-often', event: this.SUBRULE(this.name), times };
        },
      },
    ]);
  });

  /** "on" ( "refuelling" | "each" "day" "of" "work" | Name ) */
  protected readonly on = this.RULE('on', (): OccasionWhat => {
    this.CONSUME(this.v.word.on);
    return this.OR<OccasionWhat>([
      { ALT: () => (this.CONSUME(this.v.word.refuelling), { when: 'refuelling' }) },
      {
        GATE: () => this.sees(2, this.v.word.day),
        ALT: () => {
          this.CONSUME(this.v.word.each);
          this.CONSUME(this.v.word.day);
          this.CONSUME(this.v.word.of);
          this.CONSUME(this.v.word.work);
          return { when: 'on', of: 'day' };
        },
      },
      { ALT: () => ({ when: 'event', event: this.SUBRULE(this.name) }) },
    ]);
  });

  /** "within" Span ( "after" Name | "before" "each" Round ) */
  protected readonly within = this.RULE('within', (): OccasionWhat => {
    this.CONSUME(this.v.word.within);
    const within = this.SUBRULE(this.span);
    return this.OR<OccasionWhat>({
      ERR_MSG: "`after` and an event, or `before each` and `shift`, `outing` or `day's work`",
      DEF: [
        { ALT: () => (this.CONSUME(this.v.word.after), { when: 'event', event: this.SUBRULE(this.name), within }) },
        { ALT: () => (this.CONSUME(this.v.word.before), { when: 'shortly-before', of: this.SUBRULE(this.round), within }) },
      ],
    });
  });
}
