/**
 * What a slip is, and how the few words around a mistake are looked at.
 */
import { findUnit } from '../values/units.js';
import { MONTH_NAMES } from '../values/calendar.js';
import { endOf, type Token } from './token.js';
import { reservedWords } from './words.js';

/** The words around a failure: 0 is where reading failed, -1 the word before. */
export type Around = (n: number) => Token | undefined;

/** What was meant, and the edit that puts it right. */
export interface Slip {
  readonly message: string;
  readonly help?: string;
  /** Offsets of what is wrong. */
  readonly start: number;
  readonly end: number;
  readonly fix?: { readonly grade: 'sure' | 'likely' | 'possible'; readonly title: string; readonly text: string };
}

/** One kind of slip; undefined where it is another mistake. `opener` is the word that began the clause. */
export type SlipKind = (around: Around, opener: string | undefined) => Slip | undefined;

/** What a word says; nothing where there is none. */
export const image = (token: Token | undefined): string => token?.image ?? '';
/** Whether it is a number without a sign. */
export const isNumber = (token: Token | undefined): boolean => /^\d+(\.\d+)?$/.test(image(token));
/** Whether it is a unit, hours by any of their names included. */
export const isUnit = (token: Token | undefined): boolean => findUnit(image(token)) !== null || HOURS.test(image(token));
/** Whether it can be a name. */
export const isName = (token: Token | undefined): boolean => /^[a-z][a-z0-9.-]*$/.test(image(token)) && !reservedWords.has(image(token));
/** Whether it is the name of a month. */
export const isMonth = (token: Token | undefined): boolean => (MONTH_NAMES as readonly string[]).includes(image(token));
/** Hours by any of their names. */
export const HOURS = /^(?:hours?|hrs?|h)$/;

/** Whether a word follows another on its line: what begins the next line is the next clause. */
export const standsBeside = (before: Token | undefined, token: Token): boolean =>
  before !== undefined && token.startOffset - endOf(before) <= 1;

/** From one token to another, as one slip. */
export function over(from: Token, to: Token, message: string, rest: Pick<Slip, 'help' | 'fix'>): Slip {
  return { message, start: from.startOffset, end: endOf(to), ...rest };
}

/** A fix that leaves a word out. */
export function leaveOut({ image: word }: Token): NonNullable<Slip['fix']> {
  return { grade: 'sure', title: `Leave \`${word}\` out`, text: '' };
}

/** A fix that puts a text in the place of the slip. */
export function write(text: string, grade: 'sure' | 'likely' | 'possible' = 'likely'): NonNullable<Slip['fix']> {
  return { grade, title: `Write \`${text}\``, text };
}
