/**
 * Grammar, a layer that may be left out: defects, and what follows from one.
 */
import type { GrammarLayer } from './grammar-part.js';
import type { DefectNode } from './tree.js';

type ClassRule = DefectNode['rules'][number];
type DefectClass = DefectNode['classes'][number];

/** Reads defects. It goes on a grammar that reads outcomes. */
export const readingDefects: GrammarLayer = (below) =>
  class DefectGrammar extends below {
    /** Defect ::= "defect" Name Text ( "classes" ClassItem ( "," ClassItem )* )? ( Name Outcome )* */
    protected override readonly defect = this.RULE('defect', (): DefectNode => {
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

    private seesOutcome(n: number): boolean {
      const { caution, fine, hold } = this.v.word;
      return this.sees(n, fine, caution, hold);
    }
  };
