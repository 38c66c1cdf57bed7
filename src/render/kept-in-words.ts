/** How long the record of a doing is kept, in words. */
import { assertNever } from '../base/assert-never.js';
import { addAmount } from '../graph/calendar-amount.js';
import type { RecordKept } from '../graph/rule-graph.js';
import { formatDate } from '../values/civil.js';
import type { Day } from '../values/moment.js';
import { calendarInWords } from './amounts-in-words.js';

/** `14 months`, `until it is mended or 12 months, whichever last`; with the day of a doing the last day stands beside a span. */
export function keptInWords({ mode, terms }: RecordKept, done: Day | null = null): string {
  const words = terms.map((term) => termInWords(term, done)).join(' or ');
  return terms.length < 2 ? words : `${words}, whichever ${mode}`;
}

function termInWords(term: RecordKept['terms'][number], done: Day | null): string {
  switch (term.is) {
    case 'span': {
      const last = done === null || term.span.unit === 'minutes' ? null : formatDate(addAmount(done, term.span));
      return `${calendarInWords(term.span)}${last === null ? '' : ` (to ${last})`}`;
    }
    case 'mended':
      return 'until what it found is mended';
    case 'repeated':
      return 'until it is done again';
    case 'life':
      return 'for the life of the machine';
    default:
      return assertNever(term);
  }
}
