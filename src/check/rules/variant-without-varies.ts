import type { Rule } from '../context.js';
import { clausesOf } from '../clauses-of.js';
import { diagnostic } from '../report.js';

/** A variant has a base, and only a variant has one. */
export const variantWithoutVaries: Rule = {
  codes: ['variantWithoutVaries'],
  scope: 'schedule',
  check: ({ headers }) =>
    headers.flatMap((header) => {
      const base = clausesOf(header.clauses, 'varies')[0];
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
