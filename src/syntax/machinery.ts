import { Grammar } from './grammar.js';
import type { GrammarLayer } from './grammar-part.js';
import { plainOddForm, type OddForm } from './odd-form.js';
import { Splitter } from './split-tokens.js';
import { makeVocabulary, type Vocabulary } from './tokens.js';

/** The vocabulary, and the splitter and parser that are made from it. */
export interface Machinery {
  readonly vocabulary: Vocabulary;
  readonly splitter: Splitter;
  readonly grammar: Grammar;
  readonly oddForm: OddForm;
}

/** What a parser may be made with: layers of the grammar, and words for odd forms. */
export interface ParserPart {
  readonly layer: GrammarLayer;
  readonly oddForm?: OddForm;
}

/** The machinery of a parser with just those parts. */
export function machineryWith(parts: readonly ParserPart[]): Machinery {
  const vocabulary = makeVocabulary();
  const TheGrammar = parts.reduce((below, { layer }) => layer(below), Grammar);
  const oddForm = parts.findLast((part) => part.oddForm !== undefined)?.oddForm ?? plainOddForm;
  return { vocabulary, splitter: new Splitter(vocabulary.patterns), grammar: new TheGrammar(vocabulary), oddForm };
}
