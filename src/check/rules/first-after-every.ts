import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { TaskNode } from '../../syntax/tree.js';
import type { Rule } from '../context.js';
import { limitsIn, planLimits, tasksIn, type TaskLimit } from '../limits.js';
import type { Home, Model } from '../model.js';
import { stageSpans } from '../quantities/stage-spans.js';
import { diagnostic } from '../report.js';
import { sameAxis, stage, type Stage } from '../stage.js';

/** The first time is no later than the interval would have come round anyhow. */
export const firstAfterEvery: Rule = {
  codes: ['firstAfterEvery'],
  scope: 'declaration',
  check: ({ model }) => tasksIn(model).flatMap(({ node, home }) => firstProblems(model, home, node)),
};

function firstProblems(model: Model, home: Home, task: TaskNode): readonly Diagnostic[] {
  const every = task.clauses
    .flatMap((clause) => (clause.kind === 'every' ? planLimits(model, home, clause.plan) : []))
    .filter(({ interval }) => interval);
  return task.clauses.flatMap((clause) => {
    if (clause.kind !== 'first') return [];
    const spans =
      clause.what.kind === 'stages'
        ? stageSpans(clause.what.spans).slice(0, 1)
        : limitsIn(clause.what.plan).flatMap((limit) => (limit.kind === 'interval' ? [limit.span] : []));
    return spans.flatMap((span) => stage(model, home, span)).flatMap((first) => late(first, every));
  });
}

function late({ span, axis }: Stage, every: readonly TaskLimit[]): readonly Diagnostic[] {
  const sooner = every.find((limit) => sameAxis(limit.axis, axis) && limit.axis.size < axis.size);
  if (sooner === undefined) return [];
  return [
    diagnostic('firstAfterEvery', {
      at: span.at,
      message: 'The first time is later than the interval itself.',
      labels: [{ at: sooner.at, text: 'the interval' }],
      help: 'Write a first time that is shorter, or leave `first at` out.',
    }),
  ];
}
