import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { TaskNode } from '../../syntax/tree.js';
import { clausesOf } from '../clauses-of.js';
import type { Rule } from '../context.js';
import { limitsIn, planLimits, tasksIn, type TaskLimit } from '../limits.js';
import type { Home, Model } from '../model.js';
import { stageSpans } from '../quantities/stage-spans.js';
import { diagnostic } from '../report.js';
import { sameAxis, stage, type Stage } from '../stage.js';

/**
 * A first time that is longer than the interval is usual (a new vehicle is tested after three years, then yearly). One that is longer on
 * one axis and shorter on another contradicts itself.
 */
export const firstAfterEvery: Rule = {
  codes: ['firstAfterEvery'],
  scope: 'declaration',
  check: ({ model }) => tasksIn(model).flatMap(({ node, home }) => firstProblems(model, home, node)),
};

function firstProblems(model: Model, home: Home, task: TaskNode): readonly Diagnostic[] {
  const firsts = clausesOf(task.clauses, 'first');
  if (firsts.length === 0) return [];
  const every = clausesOf(task.clauses, 'every')
    .flatMap(({ plan }) => planLimits(model, home, plan))
    .filter(({ interval }) => interval);
  return firsts.flatMap(({ what }) => {
    const spans =
      what.kind === 'stages'
        ? stageSpans(what.spans).slice(0, 1)
        : limitsIn(what.plan).flatMap((limit) => (limit.kind === 'interval' ? [limit.span] : []));
    const stages = spans.flatMap((span) => stage(model, home, span));
    return stages.some((first) => isSooner(first, every)) ? stages.flatMap((first) => late(first, every)) : [];
  });
}

function isSooner({ axis }: Stage, every: readonly TaskLimit[]): boolean {
  return every.some((limit) => sameAxis(limit.axis, axis) && limit.axis.size > axis.size);
}

function late({ span, axis }: Stage, every: readonly TaskLimit[]): readonly Diagnostic[] {
  const sooner = every.find((limit) => sameAxis(limit.axis, axis) && limit.axis.size < axis.size);
  if (sooner === undefined) return [];
  return [
    diagnostic('firstAfterEvery', {
      at: span.at,
      message: 'Here the first time is longer than the interval, and elsewhere it is shorter.',
      labels: [{ at: sooner.at, text: 'the interval' }],
      help: 'A first time is either sooner or later than what follows. Correct one of the two.',
    }),
  ];
}
