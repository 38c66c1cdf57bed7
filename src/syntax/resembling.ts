import { nearNames, slipsBetween } from '../base/near-name.js';
import { MONTH_NAMES } from '../values/calendar.js';
import { allWords } from './tokens.js';
import { reservedWords } from './words.js';

/** As in `day's work`: a word with a sign in it. */
export const DAYS = "day's";

/** The words of the language, the names of months among them, that a misspelt word may stand for; the nearest first. */
export function resembling(written: string): readonly string[] {
  const month = nearNames(written, MONTH_NAMES.map((each) => each.toLowerCase())); // prettier-ignore
  const months = MONTH_NAMES.filter((each) => month.includes(each.toLowerCase()));
  // Whoever writes `to` where a name belongs has left the name out.
  const known = reservedWords.has(written);
  const words = nearNames(written, [...allWords(), DAYS]).filter(
    // A word that is one of the language itself is rarely a slip for one that is two letters away.
    (each) => each !== written && !(known && (each === 'no' || slipsBetween(each, written, 1) > 1)),
  );
  return [...words, ...months];
}
