import { clausesOf } from '../clauses-of.js';
import type { Rule } from '../context.js';
import { diagnostic } from '../report.js';
import { eachTask } from '../task-margins.js';

/** `count from` needs an interval to count. */
export const countWithoutInterval: Rule = {
  codes: ['countWithoutInterval'],
  scope: 'schedule',
  check: (context) =>
    eachTask(context, (_model, node, limits) =>
      clausesOf(node.clauses, 'count').flatMap(({ at }) => {
        if (limits.some(({ interval }) => interval)) return [];
        // An interval that cannot be read is reported already.
        if (node.clauses.some(({ kind }) => kind === 'every' || kind === 'while-every') && limits.length === 0) return [];
        return [
          diagnostic('countWithoutInterval', {
            at,
            message: 'This task has no interval to count.',
            help: 'Take the clause out, or write `every …`.',
          }),
        ];
      }),
    ),
};
