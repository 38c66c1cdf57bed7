import type { Rule } from '../context.js';
import { isNaming } from '../names.js';
import { diagnostic } from '../report.js';
import { ticked } from '../words.js';

/** A name is declared without a dot; the dot belongs to names of an attachment's things, used from outside. */
export const qualifiedDeclaration: Rule = {
  codes: ['qualifiedDeclaration'],
  scope: 'declaration',
  check: ({ model }) =>
    model.declarations.flatMap(({ node }) => {
      if (!isNaming(node) || !node.name.text.includes('.')) return [];
      const help = 'Declare it in the schedule of the attachment, without the dot.';
      return [
        diagnostic('qualifiedDeclaration', {
          at: node.name.at,
          message: `${ticked(node.name.text)} is declared with a dot in its name.`,
          help,
        }),
      ];
    }),
};
