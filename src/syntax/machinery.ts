import { Lexer, type ILexerErrorMessageProvider } from 'chevrotain';
import { Grammar } from './grammar.js';
import { makeVocabulary, type Vocabulary } from './tokens.js';

/** The vocabulary, and the lexer and parser that are made from it. */
export interface Machinery {
  readonly vocabulary: Vocabulary;
  readonly lexer: Lexer;
  readonly grammar: Grammar;
}

/** What is wrong with a character is said elsewhere (lex.ts), of the first ones only. */
const wordless: ILexerErrorMessageProvider = { buildUnexpectedCharactersMessage: () => '', buildUnableToPopLexerModeMessage: () => '' };

// Building takes some milliseconds, so it is done once, and not on import. It holds nothing from one text to the next.
let built: Machinery | undefined;

/** The machinery, built when it is first asked for. */
export function machinery(): Machinery {
  if (built !== undefined) return built;
  const vocabulary = makeVocabulary();
  const lexer = new Lexer([...vocabulary.patterns], {
    positionTracking: 'onlyOffset',
    skipValidations: true,
    ensureOptimizations: false,
    errorMessageProvider: wordless,
  });
  built = { vocabulary, lexer, grammar: new Grammar(vocabulary) };
  return built;
}
