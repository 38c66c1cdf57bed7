import type { Rule } from '../context.js';
import { amountIn, dutiesOf, isOnHours } from '../duty-intervals.js';
import { tasksIn } from '../limits.js';
import { diagnostic } from '../report.js';

/** A duty's interval is on an hour meter. */
export const dutyNotOnHours: Rule = {
  codes: ['dutyNotOnHours'],
  scope: 'declaration',
  check: ({ model }) =>
    tasksIn(model).flatMap(({ node, home }) =>
      dutiesOf(node).flatMap((clause) => {
        const amount = amountIn(model, home, clause.span);
        if (amount === undefined || isOnHours(model, amount)) return [];
        return [
          diagnostic('dutyNotOnHours', {
            at: clause.span.at,
            message: "A duty's interval has to be in hours of a meter.",
            help: `Outings note hours in a duty, nothing else: write it in hours, \`in ${clause.duty.text} every 50 h of engine\`.`,
          }),
        ];
      }),
    ),
};
