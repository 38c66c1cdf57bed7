import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { SpanNode } from '../../syntax/tree.js';
import type { Rule } from '../context.js';
import { tasksIn } from '../limits.js';
import type { Home, Model } from '../model.js';
import { stageSpans } from '../quantities/stage-spans.js';
import { diagnostic } from '../report.js';
import { sameAxis, stage } from '../stage.js';

/** Stages count on one meter or on the calendar, and each is later than the one before. */
export const stages: Rule = {
  codes: ['stagesNotIncreasing', 'mixedStages'],
  scope: 'declaration',
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
