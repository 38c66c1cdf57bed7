import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { SpanNode, TaskNode } from '../../syntax/tree.js';
import type { Rule } from '../context.js';
import { limitsIn, planLimits, tasksIn, type TaskLimit } from '../limits.js';
import type { Home, Model } from '../model.js';
import { amountOf } from '../quantities/amount.js';
import { axisOf, type Axis } from '../quantities/margin.js';
import { valueOf } from '../quantities/read.js';
import { diagnostic } from '../report.js';
import { stageSpans } from '../quantities/stage-spans.js';

interface Stage {
  readonly span: SpanNode;
  readonly axis: Axis;
}

/** Stages count on one meter or on the calendar, and each is later than the one before. */
export const stages: Rule = {
  codes: ['stagesNotIncreasing', 'mixedStages'],
  check: ({ model }) =>
    tasksIn(model).flatMap(({ node, home }) =>
      node.clauses.flatMap((clause) => {
        if (clause.kind === 'series') return inOrder(model, home, stageSpans(clause.spans));
        return clause.kind === 'first' && clause.what.kind === 'stages' ? inOrder(model, home, stageSpans(clause.what.spans)) : [];
      }),
    ),
};

function inOrder(model: Model, home: Home, spans: readonly SpanNode[]): readonly Diagnostic[] {
  const read = spans.flatMap((span) => stage(model, home, span));
  return read.flatMap((later, index) => {
    const before = read[index - 1];
    const [first] = read;
    if (before === undefined || first === undefined) return [];
    if (!sameAxis(later.axis, first.axis)) {
      const help = 'Write the whole list on one meter, or use `or … whichever first`.';
      return [
        diagnostic('mixedStages', {
          at: later.span.at,
          message: 'This stage counts on something else than the first one.',
          labels: [{ at: first.span.at, text: 'the first stage' }],
          help,
        }),
      ];
    }
    if (!sameAxis(before.axis, later.axis) || later.axis.size > before.axis.size) return [];
    return [
      diagnostic('stagesNotIncreasing', {
        at: later.span.at,
        message: 'This stage is not later than the one before it.',
        labels: [{ at: before.span.at, text: 'the stage before' }],
        help: 'Write the stages from the first to the last.',
      }),
    ];
  });
}

function stage(model: Model, home: Home, span: SpanNode): readonly Stage[] {
  const read = amountOf(model, home, span);
  const amount = read === undefined ? undefined : valueOf(read);
  return amount === undefined ? [] : [{ span, axis: axisOf(model, amount) }];
}

function sameAxis(a: Axis, b: Axis): boolean {
  return a.on === b.on && a.meter === b.meter;
}

/** The first time is no later than the interval would have come round anyhow. */
export const firstAfterEvery: Rule = {
  codes: ['firstAfterEvery'],
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

/** `first at` takes spans only. */
export const firstOfMarks: Rule = {
  codes: ['firstOfMarks'],
  check: ({ model }) =>
    tasksIn(model).flatMap(({ node }) =>
      node.clauses.flatMap((clause) => {
        if (clause.kind !== 'first' || clause.what.kind !== 'plan') return [];
        const marks = limitsIn(clause.what.plan).filter(({ kind }) => kind !== 'interval');
        return marks.map(({ at }) =>
          diagnostic('firstOfMarks', {
            at,
            message: "`first at` counts a span from the machine's start, and this is none.",
            help: 'Write a span: `first at 50 h of engine`.',
          }),
        );
      }),
    ),
};

/** Multiples are of a meter. */
export const multipleNotOnMeter: Rule = {
  codes: ['multipleNotOnMeter'],
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
