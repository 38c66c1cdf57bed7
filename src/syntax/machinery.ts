import { Grammar } from './grammar.js';
import { Splitter } from './split-tokens.js';
import { makeVocabulary, type Vocabulary } from './tokens.js';

/** The vocabulary, and the splitter and parser that are made from it. */
export interface Machinery {
  readonly vocabulary: Vocabulary;
  readonly splitter: Splitter;
  readonly grammar: Grammar;
}

// Building takes some milliseconds, so it is done once, and not on import. It holds nothing from one text to the next.
let built: Machinery | undefined;

/** The machinery, built when it is first asked for. */
export function machinery(): Machinery {
  if (built !== undefined) return built;
  const vocabulary = makeVocabulary();
  built = { vocabulary, splitter: new Splitter(vocabulary.patterns, vocabulary.WhiteSpace), grammar: new Grammar(vocabulary) };
  return built;
}
