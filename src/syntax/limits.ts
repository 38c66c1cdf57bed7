/**
 * Bounds on what the parser takes on, so that a text from outside cannot keep it busy.
 */
export interface ParseLimits {
  /** Longest text, in UTF-16 code units. */
  readonly size: number;
  /** Deepest nesting of parentheses and `not`. */
  readonly nesting: number;
  /** Most words, numbers, texts and signs in one declaration. */
  readonly words: number;
  /** Mistakes after which the parser gives up on the file. */
  readonly mistakes: number;
}

/** 256 Ki characters, 64 levels, 2,000 words in a declaration, 100 mistakes. */
export const defaultLimits: ParseLimits = { size: 262_144, nesting: 64, words: 2000, mistakes: 100 };
