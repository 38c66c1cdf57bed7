import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { TaskNode } from '../../syntax/tree.js';
import { clausesOf } from '../clauses-of.js';
import type { Rule } from '../context.js';
import { type TaskLimit } from '../limits.js';
import type { Model } from '../model.js';
import { marginOn } from '../quantities/margin.js';
import { diagnostic } from '../report.js';
import { eachTask, marginsIn, type Margin } from '../task-margins.js';

/** Each allowance, lead and hold goes with some limit of its task. */
export const marginWithoutLimit: Rule = {
  codes: ['marginWithoutLimit'],
  scope: 'schedule',
  check: (context) =>
    eachTask(context, (model, node, limits) => [...homeless(model, marginsIn(node), limits), ...holdOfNothing(node, limits)]),
};

function homeless(model: Model, margins: readonly Margin[], limits: readonly TaskLimit[]): readonly Diagnostic[] {
  return margins.flatMap(({ word, margin }) => {
    if (limits.some(({ axis }) => marginOn(model, margin, axis) !== undefined)) return [];
    const help =
      limits.length === 0
        ? 'The task has no limit: write `every …`, or take this out.'
        : 'A margin in hours goes with hours, one in days with the calendar.';
    return [diagnostic('marginWithoutLimit', { at: margin.at, message: `This ${word} goes with no limit of the task.`, help })];
  });
}

function holdOfNothing({ clauses }: TaskNode, limits: readonly TaskLimit[]): readonly Diagnostic[] {
  return clausesOf(clauses, 'hold').flatMap(({ margin, at }) => {
    if (margin !== undefined || limits.length > 0) return [];
    return [
      diagnostic('marginWithoutLimit', {
        at,
        message: 'This task has no limit that could be overdue.',
        help: 'Write `every …`, or take the hold out.',
      }),
    ];
  });
}
