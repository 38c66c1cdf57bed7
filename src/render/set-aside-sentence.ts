/**
 * Readings that are not believed, and newer than what an answer rests on: it could be another if they are true.
 */
import type { Explanation } from '../explain/explanation.js';
import type { Suspect, Timeline } from '../history/timeline.js';
import { notBefore } from '../values/moment.js';
import { numberText } from '../values/number-text.js';
import type { Titles } from './amounts-in-words.js';
import { asSentence } from './count-in-words.js';
import { momentInWords } from './dates-in-words.js';
import { safeText } from './safe-text.js';

/** One sentence for each such reading of a meter that the explanation speaks of, in the order of the history. */
export function setAsideSentences({ suspects, meters }: Timeline, { names }: Explanation): readonly string[] {
  return suspects
    .filter(({ meter, when }) => names.meters[meter] !== undefined && isNewer(meter, when))
    .map((each) => suspectSentence(each, names));

  function isNewer(meter: string, when: Suspect['when']): boolean {
    const last = meters.get(meter)?.points.at(-1);
    return last === undefined || notBefore(when, last.when);
  }
}

/** What it showed, why it is not believed, and what to do: `Engine 1200 h on 11 January 2026: it rises faster than time passed, …`. */
export function suspectSentence({ meter, shown, when, why, entry }: Suspect, names: Titles): string {
  const cause = why === 'falls' ? 'it is less than what was read before' : 'it rises faster than time passed';
  const read = `${asSentence(safeText(meter))} ${numberText(shown)} ${safeText(names.meters[meter]?.unit ?? 'h')} on ${momentInWords(when)}`;
  return `${read}: ${cause}, and it is not used until you confirm or void it. [${safeText(entry)}]`;
}
