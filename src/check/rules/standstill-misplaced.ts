import type { Span } from '../../base/span.js';
import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { PlanNode, StandstillNode, TaskNode } from '../../syntax/tree.js';
import type { Rule } from '../context.js';
import { limitsIn, tasksIn } from '../limits.js';
import type { Home, Model } from '../model.js';
import { amountOf, calendarAmountOf } from '../quantities/amount.js';
import { valueOf } from '../quantities/read.js';
import { diagnostic } from '../report.js';

/** Storage is left out of spans of the calendar, in an interval that counts from the doing. */
export const standstillMisplaced: Rule = {
  codes: ['standstillMisplaced'],
  scope: 'declaration',
  check: ({ model }) =>
    tasksIn(model).flatMap(({ node, home }) =>
      node.clauses.flatMap((clause) => {
        if (clause.kind === 'first' && clause.what.kind === 'plan')
          return standstillsIn(clause.what.plan).map(({ at }) => misplaced(at, 'A first time goes on through storage.', LEAVE_OUT));
        return clause.kind === 'every' || clause.kind === 'while-every' ? inPlan(model, home, node, clause.plan) : [];
      }),
    ),
};

const LEAVE_OUT = 'Take it out, or say it of what stands after `every`.';

function inPlan(model: Model, home: Home, task: TaskNode, plan: PlanNode): readonly Diagnostic[] {
  const beat = task.clauses.find((clause) => clause.kind === 'count' && clause.from !== 'doing');
  return limitsIn(plan).flatMap((limit) => {
    if (limit.kind !== 'interval' || limit.standstill === undefined) return [];
    const { at, atLeast } = limit.standstill;
    const read = amountOf(model, home, limit.span);
    const amount = read === undefined ? undefined : valueOf(read);
    if (amount !== undefined && amount.on !== 'calendar')
      return [
        misplaced(at, 'In storage nothing is added to this limit in any case.', 'Say it of a limit in days, weeks, months or years.'),
      ];
    const length = atLeast === undefined ? undefined : valueOf(calendarAmountOf(atLeast));
    if (length?.unit === 'minutes') return [misplaced(at, 'Storage is counted in days.', 'Write days, weeks, months or years.')];
    return beat === undefined
      ? []
      : [
          misplaced(at, 'Where storage does not count, the next time counts from when it was done.', 'Take out one of the two.', [
            { at: beat.at, text: 'here it keeps its beat' },
          ]),
        ];
  });
}

function standstillsIn(plan: PlanNode): readonly StandstillNode[] {
  return limitsIn(plan).flatMap((limit) => (limit.kind === 'interval' && limit.standstill !== undefined ? [limit.standstill] : []));
}

function misplaced(at: Span, message: string, help: string, labels: Diagnostic['labels'] = []): Diagnostic {
  return diagnostic('standstillMisplaced', { at, message, help, labels });
}
