import { nearNames } from '../../base/near-name.js';
import type { Rule } from '../context.js';
import { lookUp } from '../names.js';
import { diagnostic, rewrite } from '../report.js';
import { kindName, kindsName, ticked } from '../words.js';
import { allKinds } from './unknown-name.js';

/** A name has to be of a kind that can be meant where it stands. */
export const wrongKindOfName: Rule = {
  codes: ['wrongKind'],
  scope: 'declaration',
  check: ({ model, table, patience }) =>
    model.references.flatMap(({ name, kinds, home, definition }) => {
      const other = definition === undefined ? lookUp(table, name, allKinds, home) : undefined;
      if (other === undefined) return [];
      const near = nearNames(name.text, table.visible(kinds, home), patience)[0];
      return [
        diagnostic('wrongKind', {
          at: name.at,
          message: `${ticked(name.text)} is ${kindName(other.kind)}, where ${kindsName(kinds)} is wanted.`,
          labels: [{ at: other.at, text: 'declared here' }],
          ...(near === undefined ? {} : { help: `Did you mean ${ticked(near)}?`, fixes: [rewrite('possible', name.at, near)] }),
        }),
      ];
    }),
};
