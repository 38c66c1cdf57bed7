import type { Rule } from '../context.js';
import { clausesOf } from '../clauses-of.js';
import { diagnostic } from '../report.js';

/** Language, edition, base and kind of schedule are said once; models and parts may be many. */
export const repeatedHeadClause: Rule = {
  codes: ['repeatedHeadClause'],
  scope: 'schedule',
  check: ({ headers }) =>
    headers.flatMap((header) =>
      (['language', 'edition', 'varies', 'for-attachment'] as const).flatMap((kind) => {
        const [first, ...others] = clausesOf(header.clauses, kind);
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
