import { clausesOf } from '../clauses-of.js';
import type { Rule } from '../context.js';
import { tasksIn } from '../limits.js';
import { diagnostic } from '../report.js';
import { ticked } from '../words.js';

/** A reading that asks for its own task at once asks for ever. */
export const askedInCircle: Rule = {
  codes: ['askedInCircle'],
  scope: 'declaration',
  check: ({ model }) =>
    tasksIn(model).flatMap(({ node }) =>
      clausesOf(node.clauses, 'reads').flatMap(({ bands }) => {
        const asked = bands
          .flatMap(({ outcome }) => outcome.then)
          .filter(({ task, within }) => within === undefined && model.meaning.get(task)?.node === node);
        return asked.map(({ at }) => {
          const help = 'Ask for the task that puts it right, or give it time with `within`.';
          return diagnostic('askedInCircle', {
            at,
            message: `${ticked(node.name.text)} asks for itself at once, and so is due again as soon as it is done.`,
            help,
          });
        });
      }),
    ),
};
