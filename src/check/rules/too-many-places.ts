import type { Rule } from '../context.js';
import { placed } from '../model.js';
import { diagnostic } from '../report.js';
import { ticked } from '../words.js';

/** Each place may be gone to from each other, so what there is to work out grows with the cube of their number. */
const MOST_PLACES = 200;

/** A person goes round a machine on foot: its places can be counted. */
export const tooManyPlaces: Rule = {
  codes: ['limitReached'],
  scope: 'schedule',
  check: ({ model }) => {
    const over = placed(model, 'place')[MOST_PLACES];
    if (over === undefined) return [];
    return [
      diagnostic('limitReached', {
        at: over.node.name.at,
        message: `A machine may have at most ${MOST_PLACES} places, and ${ticked(over.node.name.text)} goes past that.`,
        help: 'Name the places where somebody stands, not each thing that is reached from there.',
      }),
    ];
  },
};
