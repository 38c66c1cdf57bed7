import type { WhicheverNode } from '../../syntax/tree.js';
import type { Rule } from '../context.js';
import { tasksIn } from '../limits.js';
import { diagnostic } from '../report.js';
import { nodesOfKind } from '../walk.js';

/** Several limits say whether the first or the last of them counts. */
export const whicheverMissing: Rule = {
  codes: ['whicheverMissing'],
  check: ({ model }) =>
    tasksIn(model).flatMap(({ node }) =>
      nodesOfKind<WhicheverNode>(node, 'whichever').flatMap(({ at, mode }) => {
        if (mode !== undefined) return [];
        const end = { ...at, start: at.end };
        const fixes = (['first', 'last'] as const).map((word, order) => ({
          grade: order === 0 ? ('likely' as const) : ('possible' as const),
          title: `Write \`whichever ${word}\`.`,
          edits: [{ at: end, text: `, whichever ${word}` }],
        }));
        return [diagnostic('whicheverMissing', { at, message: 'Nothing says which of these limits counts, the first to be reached or the last.', help: 'Write `whichever first` or `whichever last` after them.', fixes })];
      }),
    ),
};
