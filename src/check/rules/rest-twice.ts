import type { Rule } from '../context.js';
import { diagnostic } from '../report.js';
import { itemsOf } from '../stance-items.js';
import { ticked } from '../words.js';

/** One position for each part, at rest and at work. */
export const restTwice: Rule = {
  codes: ['restTwice'],
  scope: 'schedule',
  check: ({ model }) =>
    (['rest', 'work'] as const).flatMap((which) => {
      const items = itemsOf(model, which);
      return items.flatMap(({ part, at }, index) => {
        const id = model.meaning.get(part)?.id;
        const earlier = items.slice(0, index).find((other) => id !== undefined && model.meaning.get(other.part)?.id === id);
        if (earlier === undefined) return [];
        return [
          diagnostic('restTwice', {
            at,
            message: `${ticked(part.text)} already has a position at ${which}.`,
            labels: [{ at: earlier.at, text: 'this one' }],
            help: 'Take one of the two out.',
          }),
        ];
      });
    }),
};
