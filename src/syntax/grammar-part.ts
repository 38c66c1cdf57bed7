/**
 * Parts of the grammar that a parser may be made without: a layer each, put on top of the rest.
 */
import type { Span } from '../base/span.js';
import type { Grammar } from './grammar.js';
import { Mismatch } from './rule-reader.js';
import type { Token } from './token.js';
import type { Vocabulary } from './tokens.js';

/** What a layer is put on, and what comes of it. */
export type GrammarClass = new (vocabulary: Vocabulary) => Grammar;

/** A layer of the grammar. */
export type GrammarLayer = (below: GrammarClass) => GrammarClass;

/** What the parts are called that a grammar may lack. */
export type GrammarPart = 'conditions' | 'findings' | 'access' | 'examples' | 'weekdayMarks';

/** Something that the grammar was not given the part for. */
export interface Missing {
  readonly part: GrammarPart;
  /** The word that asks for it. */
  readonly at: Span;
}

/** Something stands here that a part reads which this grammar was not given. */
export class PartMissing extends Mismatch {
  constructor(
    readonly part: GrammarPart,
    readonly token: Token,
  ) {
    super(part);
  }
}
