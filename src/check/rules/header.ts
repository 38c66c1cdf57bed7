import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { HeaderNode } from '../../syntax/tree.js';
import type { Rule } from '../context.js';
import { clausesOf } from '../load/gather.js';
import { diagnostic } from '../report.js';

const knownEditions: readonly number[] = [1];

/** The header says which edition of the language it is written in, once. */
export const languageEdition: Rule = {
  codes: ['missingLanguage', 'unknownLanguage'],
  check: ({ headers }) => headers.flatMap(languageOf),
};

function languageOf(header: HeaderNode): readonly Diagnostic[] {
  const editions = clausesOf(header, 'language');
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

/** Language, edition, base and kind of schedule are said once; models and parts may be many. */
export const repeatedHeadClause: Rule = {
  codes: ['repeatedHeadClause'],
  check: ({ headers }) =>
    headers.flatMap((header) =>
      (['language', 'edition', 'varies', 'for-attachment'] as const).flatMap((kind) => {
        const [first, ...others] = clausesOf(header, kind);
        return others.map(({ at }) =>
          diagnostic('repeatedHeadClause', {
            at,
            message: `\`${kind.replace('-', ' ')}\` stands here a second time.`,
            labels: first === undefined ? [] : [{ at: first.at, text: 'first here' }],
            help: 'Take one of the two out.',
          }),
        );
      }),
    ),
};

/** A variant has a base, and only a variant has one. */
export const variantWithoutVaries: Rule = {
  codes: ['variantWithoutVaries'],
  check: ({ headers }) =>
    headers.flatMap((header) => {
      const base = clausesOf(header, 'varies')[0];
      if (header.role === 'variant' && base === undefined) {
        return [
          diagnostic('variantWithoutVaries', {
            at: header.name.at,
            message: `The variant \`${header.name.text}\` does not say what it is a variant of.`,
            help: 'Name its base: `varies "tarn-55"`.',
          }),
        ];
      }
      if (header.role === 'variant' || base === undefined) return [];
      return [
        diagnostic('variantWithoutVaries', {
          at: base.at,
          message: `Only a variant has a base, and \`${header.name.text}\` is a ${header.role}.`,
          help: 'Begin the file with `variant`, or take `varies` out.',
        }),
      ];
    }),
};

/** The header of the file that was asked for should say which machines it fits. */
export const missingFits: Rule = {
  codes: ['missingFits'],
  check: ({ headers }) => {
    const [header] = headers;
    if (header === undefined || header.role === 'part' || clausesOf(header, 'fits').length > 0) return [];
    return [
      diagnostic('missingFits', {
        at: header.name.at,
        message: `\`${header.name.text}\` does not say which machines it fits.`,
        help: 'Write `fits model "…"`, with `serial … to …` if not all of them.',
      }),
    ];
  },
};
