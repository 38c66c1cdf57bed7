import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { OftenNode, PlanNode, TaskNode } from '../../syntax/tree.js';
import type { Rule } from '../context.js';
import { limitsIn, tasksIn } from '../limits.js';
import type { Home, Model } from '../model.js';
import { amountOf, calendarAmountOf } from '../quantities/amount.js';
import { valueOf } from '../quantities/read.js';
import { diagnostic } from '../report.js';

/** So many times within a span is counted from doings, on a meter or the calendar; how far apart, in days. */
export const oftenMisplaced: Rule = {
  codes: ['oftenMisplaced'],
  scope: 'declaration',
  check: ({ model }) =>
    tasksIn(model).flatMap(({ node, home }) =>
      node.clauses.flatMap((clause) => {
        if (clause.kind === 'first' && clause.what.kind === 'plan')
          return oftenIn(clause.what.plan).map(({ often }) => misplaced(often, 'The first time is once.', 'Leave out how many times.'));
        return clause.kind === 'every' || clause.kind === 'while-every' ? inPlan(model, home, node, clause.plan) : [];
      }),
    ),
};

function inPlan(model: Model, home: Home, task: TaskNode, plan: PlanNode): readonly Diagnostic[] {
  const has = (kind: 'count' | 'in-duty'): boolean =>
    task.clauses.some((clause) => clause.kind === kind && (clause.kind !== 'count' || clause.from !== 'doing'));
  return oftenIn(plan).flatMap((limit) => {
    const { often } = limit;
    const apart = often.apart === undefined ? undefined : calendarAmountOf(often.apart);
    if (apart !== undefined && valueOf(apart)?.unit === 'minutes')
      return [
        misplaced(often, 'How far apart is told in days.', 'Write days, weeks, months or years, such as `2 times, 20 months apart`.'),
      ];
    if (limit.kind === 'calendar-period') return [];
    const read = amountOf(model, home, limit.span);
    const on = read === undefined ? undefined : valueOf(read)?.on;
    if (on === 'work')
      return [
        misplaced(
          often,
          'Time at work is counted from the last time only.',
          'Count on the calendar or a meter, such as `every 5 years 2 times`.',
        ),
      ];
    if (on === 'meter' && has('in-duty'))
      return [misplaced(often, 'Hours in duties are counted from the last time only.', 'Leave out how many times, or the `in …` clause.')];
    return has('count')
      ? [misplaced(often, 'A beat that is kept goes from one time to the next.', 'Leave out how many times, or the `count` clause.')]
      : [];
  });
}

function oftenIn(plan: PlanNode) {
  return limitsIn(plan).flatMap((limit) =>
    (limit.kind === 'interval' || limit.kind === 'calendar-period') && limit.often !== undefined ? [{ ...limit, often: limit.often }] : [],
  );
}

function misplaced({ at }: OftenNode, message: string, help: string): Diagnostic {
  return diagnostic('oftenMisplaced', { at, message, help });
}
