import type { Rule } from '../context.js';
import { limitsIn, tasksIn } from '../limits.js';
import { amountOf } from '../quantities/amount.js';
import { valueOf } from '../quantities/read.js';
import { diagnostic } from '../report.js';

/** Multiples are of a meter. */
export const multipleNotOnMeter: Rule = {
  codes: ['multipleNotOnMeter'],
  scope: 'declaration',
  check: ({ model }) =>
    tasksIn(model).flatMap(({ node, home }) =>
      node.clauses.flatMap((clause) => {
        if (clause.kind !== 'every' && clause.kind !== 'while-every') return [];
        return limitsIn(clause.plan).flatMap((limit) => {
          const read = limit.kind === 'multiple' ? amountOf(model, home, limit.span) : undefined;
          const amount = read === undefined ? undefined : valueOf(read);
          if (amount === undefined || amount.on === 'meter') return [];
          const help =
            amount.on === 'work' ? 'Count the marks on a meter.' : 'For the calendar write `year on 1 November` or `month on day 15`.';
          return [diagnostic('multipleNotOnMeter', { at: limit.at, message: 'Only a meter has marks to count multiples of.', help })];
        });
      }),
    ),
};
