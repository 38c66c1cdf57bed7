import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { MarginNode, TaskNode } from '../../syntax/tree.js';
import type { CheckContext, Rule } from '../context.js';
import { limitsByTask, type TaskLimit } from '../limits.js';
import type { Model } from '../model.js';
import { marginOn } from '../quantities/margin.js';
import { diagnostic } from '../report.js';

interface Margin {
  readonly word: string;
  readonly margin: MarginNode;
}

/** Each allowance, lead and hold goes with some limit of its task. */
export const marginWithoutLimit: Rule = {
  codes: ['marginWithoutLimit'],
  check: (context) =>
    eachTask(context, (model, node, limits) => [...homeless(model, marginsIn(node), limits), ...holdOfNothing(node, limits)]),
};

/** A margin is shorter than the limit it goes with. */
export const allowanceTooLong: Rule = {
  codes: ['allowanceTooLong'],
  check: (context) =>
    eachTask(context, (model, node, limits) =>
      marginsIn(node).flatMap(({ word, margin }) => {
        // A percentage of more than all is told as an impossible number.
        if (word === 'stop' || (margin.kind === 'percent' && margin.number.value >= 100)) return [];
        const short = limits.find(
          ({ axis, amount, interval }) => interval && amount !== undefined && (marginOn(model, margin, axis) ?? -1) >= axis.size,
        );
        if (short === undefined) return [];
        return [
          diagnostic('allowanceTooLong', {
            at: margin.at,
            message: `This ${word} is as long as the interval itself.`,
            labels: [{ at: short.at, text: 'the interval' }],
            help: 'Write a shorter one.',
          }),
        ];
      }),
    ),
};

/** `count from` needs an interval to count. */
export const countWithoutInterval: Rule = {
  codes: ['countWithoutInterval'],
  check: (context) =>
    eachTask(context, (_model, node, limits) =>
      node.clauses.flatMap((clause) => {
        if (clause.kind !== 'count' || limits.some(({ interval }) => interval)) return [];
        // An interval that cannot be read is reported already.
        if (node.clauses.some(({ kind }) => kind === 'every' || kind === 'while-every') && limits.length === 0) return [];
        return [
          diagnostic('countWithoutInterval', {
            at: clause.at,
            message: 'This task has no interval to count.',
            help: 'Take the clause out, or write `every …`.',
          }),
        ];
      }),
    ),
};

function eachTask(
  { model }: CheckContext,
  judge: (model: Model, node: TaskNode, limits: readonly TaskLimit[]) => readonly Diagnostic[],
): readonly Diagnostic[] {
  return limitsByTask(model).flatMap(({ node, limits }) => judge(model, node, limits));
}

function marginsIn({ clauses }: TaskNode): readonly Margin[] {
  return clauses.flatMap((clause) => {
    if (clause.kind === 'allow') return clause.sides.map(({ margin }) => ({ word: 'allowance', margin }));
    if (clause.kind === 'lead') return clause.margins.map((margin) => ({ word: 'lead', margin }));
    return clause.kind === 'hold' && clause.margin !== undefined ? [{ word: 'stop', margin: clause.margin }] : [];
  });
}

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
  return clauses.flatMap((clause) => {
    if (clause.kind !== 'hold' || clause.margin !== undefined || limits.length > 0) return [];
    return [
      diagnostic('marginWithoutLimit', {
        at: clause.at,
        message: 'This task has no limit that could be overdue.',
        help: 'Write `every …`, or take the hold out.',
      }),
    ];
  });
}
