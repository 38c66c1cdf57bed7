import { clausesOf } from '../clauses-of.js';
import type { Rule } from '../context.js';
import { limitsIn, tasksIn } from '../limits.js';
import { diagnostic } from '../report.js';

/** `first at` takes spans only. */
export const firstOfMarks: Rule = {
  codes: ['firstOfMarks'],
  scope: 'declaration',
  check: ({ model }) =>
    tasksIn(model).flatMap(({ node }) =>
      clausesOf(node.clauses, 'first').flatMap(({ what }) => {
        if (what.kind !== 'plan') return [];
        const marks = limitsIn(what.plan).filter(({ kind }) => kind !== 'interval');
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
