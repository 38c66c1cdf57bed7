import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { HeaderNode } from '../../syntax/tree.js';
import type { Rule } from '../context.js';
import { clausesOf } from '../clauses-of.js';
import { diagnostic } from '../report.js';

const knownEditions: readonly number[] = [1];

/** The header says which edition of the language it is written in, once. */
export const languageEdition: Rule = {
  codes: ['missingLanguage', 'unknownLanguage'],
  scope: 'schedule',
  check: ({ headers }) => headers.flatMap(languageOf),
};

function languageOf(header: HeaderNode): readonly Diagnostic[] {
  const editions = clausesOf(header.clauses, 'language');
  // A part is read in the language of the schedule that uses it.
  if (editions.length === 0 && header.role !== 'part') {
    const end = { ...header.title.at, start: header.title.at.end };
    const fixes = [{ grade: 'sure' as const, title: 'Write `language 1` after the title.', edits: [{ at: end, text: '\n  language 1' }] }];
    return [
      diagnostic('missingLanguage', {
        at: header.name.at,
        message: 'The header does not say in which edition of the language this is written.',
        help: 'Write `language 1` after the title.',
        fixes,
      }),
    ];
  }
  return editions.flatMap(({ edition }) => {
    if (knownEditions.includes(edition.value)) return [];
    const fixes = [{ grade: 'possible' as const, title: 'Write `1`.', edits: [{ at: edition.at, text: '1' }] }];
    return [
      diagnostic('unknownLanguage', {
        at: edition.at,
        message: `There is no edition ${edition.text} of the language that this program knows.`,
        help: 'It knows edition 1.',
        fixes,
      }),
    ];
  });
}
