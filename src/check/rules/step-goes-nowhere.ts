import type { Rule } from '../context.js';
import { placed } from '../model.js';
import { diagnostic } from '../report.js';
import { ticked } from '../words.js';

/** A step changes its part. */
export const stepGoesNowhere: Rule = {
  codes: ['stepGoesNowhere'],
  scope: 'declaration',
  check: ({ model }) =>
    placed(model, 'step').flatMap(({ node }) =>
      node.from.text !== node.to.text
        ? []
        : [
            diagnostic('stepGoesNowhere', {
              at: node.to.at,
              message: `This step leaves ${ticked(node.part.text)} as it is.`,
              help: 'Write the position that it is in afterwards.',
            }),
          ],
    ),
};
