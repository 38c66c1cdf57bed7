import type { Rule } from '../context.js';
import { definitionsOf } from '../model.js';
import { diagnostic } from '../report.js';
import { itemsOf } from '../stance-items.js';
import { listed } from '../../base/listed.js';
import { ticked } from '../words.js';

/** Every moving part has its position at rest. */
export const restIncomplete: Rule = {
  codes: ['restIncomplete'],
  scope: 'schedule',
  check: ({ model }) => {
    const said = new Set(itemsOf(model, 'rest').map(({ part }) => model.meaning.get(part)?.id));
    const missing = definitionsOf(model, 'position').filter(({ id }) => !said.has(id));
    return missing.map(({ at, name, node }) =>
      diagnostic('restIncomplete', {
        at,
        message: `Nothing says how ${ticked(name)} is at rest.`,
        help: `Add it to \`at rest\`: ${listed(
          node.positions.map((position) => ticked(`${name} ${position.name.text}`)),
          'or',
        )}.`,
      }),
    );
  },
};
