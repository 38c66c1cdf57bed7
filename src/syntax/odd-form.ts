/**
 * What was written in an odd form, told by what it is: tidy.ts tells it by what was meant.
 */
import { diagnose, type Code } from '../diagnostics/catalogue-entry.js';
import { syntaxCodes } from '../diagnostics/codes/syntax.js';
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import { endOf, retype, type Token, type TokenKind } from './token.js';
import type { Vocabulary } from './tokens.js';

/**
 * Says what is odd about a token, and changes it in place to what stands for it. `before` is the token before it: after a number a word is a unit.
 *
 * Law: whatever tells of odd forms tells of the same tokens, with the same codes and at the same places.
 */
export type OddForm = (token: Token, before: Token | undefined, file: number, vocabulary: Vocabulary) => readonly Diagnostic[];

/** Whether a word that is not written as a name is takes the place of a unit: with a capital or a sign it is one. */
export function isInPlaceOfUnit(before: Token | undefined, vocabulary: Vocabulary): boolean {
  return before?.tokenType === vocabulary.Number || /^(?:reads|counts)$/.test(before?.image ?? '');
}

/** Whether a text that is not one in straight double quotes stands in quotes of another kind. */
export const curlyText = /^[“”„«'‘’](.*?)["“”»'‘’]$/s;

/** Backslashes that stand before neither a quote nor a backslash. */
export function strayBackslashes({ image }: Token): readonly RegExpExecArray[] {
  return image.includes('\\') ? [...image.matchAll(/\\([^])/g)].filter(([, next]) => next !== '"' && next !== '\\') : [];
}

/** Tells odd forms, with nothing about what was meant. */
export const plainOddForm: OddForm = (token, before, file, vocabulary) => {
  const { odd } = vocabulary;
  const start = token.startOffset;
  const tell = (kind: TokenKind, code: Code, end = endOf(token)): readonly Diagnostic[] => {
    retype(token, kind);
    return [diagnose(code, { message: `\`${token.image.trimEnd()}\` is not written as ${kind.label} is.`, at: { file, start, end } })];
  };
  switch (token.tokenType) {
    case vocabulary.Text:
      return strayBackslashes(token).map(({ index }) => {
        const at = { file, start: start + index, end: start + index + 1 };
        return diagnose(syntaxCodes.unknownEscape, { message: 'A backslash stands only before a quote or a backslash.', at });
      });
    case vocabulary.DaysWork:
      return token.image === "day's" ? [] : tell(vocabulary.DaysWork, syntaxCodes.oddCharacter);
    case odd.text:
      if (curlyText.test(token.image)) return tell(vocabulary.Text, syntaxCodes.oddCharacter);
      return tell(vocabulary.Text, syntaxCodes.textNotClosed, start + token.image.trimEnd().length);
    case odd.number:
      return tell(vocabulary.Number, syntaxCodes.numberForm);
    case odd.date:
      return tell(vocabulary.Date, syntaxCodes.numberForm);
    case odd.time:
      return tell(vocabulary.Time, syntaxCodes.numberForm);
    case odd.word:
      if (!isInPlaceOfUnit(before, vocabulary)) return tell(vocabulary.Name, syntaxCodes.nameForm);
      retype(token, vocabulary.UnitSign);
      return [];
    default:
      return [];
  }
};
