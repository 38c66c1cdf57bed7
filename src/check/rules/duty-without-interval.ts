import type { LimitNode } from '../../syntax/tree.js';
import type { Rule } from '../context.js';
import { amountIn, dutiesOf, isOnHours, ordinaryOn } from '../duty-intervals.js';
import { tasksIn } from '../limits.js';
import { diagnostic } from '../report.js';

/** It shortens the one ordinary interval on that meter. */
export const dutyWithoutInterval: Rule = {
  codes: ['dutyWithoutInterval'],
  scope: 'declaration',
  check: ({ model }) =>
    tasksIn(model).flatMap(({ node, home }) =>
      dutiesOf(node).flatMap((clause) => {
        const amount = amountIn(model, home, clause.span);
        if (amount === undefined || !isOnHours(model, amount)) return [];
        const ordinary = ordinaryOn(model, home, node, amount);
        if (ordinary === undefined || (ordinary.length === 1 && !isStrict(ordinary[0]))) return [];
        const why = ordinary.length > 1 ? 'more than one' : ordinary.length === 1 ? 'only a `more than` limit' : 'no ordinary interval';
        const labels = ordinary.map(({ at }) => ({ at, text: 'on this meter' }));
        return [
          diagnostic('dutyWithoutInterval', {
            at: clause.at,
            message: `There is ${why} on this meter for the duty to shorten.`,
            labels,
            help: 'Give the task one `every … h of …` on the same meter.',
          }),
        ];
      }),
    ),
};

function isStrict(limit: LimitNode | undefined): boolean {
  return limit?.kind === 'interval' && limit.strict;
}
