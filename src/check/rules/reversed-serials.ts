import type { SerialRangeNode } from '../../syntax/tree.js';
import type { Rule } from '../context.js';
import { diagnostic } from '../report.js';

/** A range of serial numbers runs upwards. */
export const reversedSerials: Rule = {
  codes: ['reversedSerials'],
  scope: 'declaration',
  check: ({ nodes }) =>
    nodes.all<SerialRangeNode>('serial-range').flatMap(({ at, from, to }) => {
      if (from.value <= to.value) return [];
      const swapped = {
        grade: 'likely' as const,
        title: 'Swap the two numbers.',
        edits: [
          { at: from.at, text: to.text },
          { at: to.at, text: from.text },
        ],
      };
      return [
        diagnostic('reversedSerials', {
          at,
          message: `The serial numbers run from ${from.text} down to ${to.text}.`,
          help: 'Write the lower number first.',
          fixes: [swapped],
        }),
      ];
    }),
};
