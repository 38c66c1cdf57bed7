import type { NameNode } from '../../syntax/tree.js';
import type { Rule } from '../context.js';
import { placed, type Model } from '../model.js';
import { diagnostic } from '../report.js';
import { ticked } from '../words.js';

/** Some names would mean something else where they are used. */
export const misleadingName: Rule = {
  codes: ['misleadingName'],
  scope: 'declaration',
  check: ({ model }) =>
    suspects(model).flatMap(({ name, words, meaning }) =>
      words.includes(name.text)
        ? [
            diagnostic('misleadingName', {
              at: name.at,
              message: `${ticked(name.text)} cannot be a name here: ${meaning}.`,
              help: 'Choose another name.',
            }),
          ]
        : [],
    ),
};

interface Suspect {
  readonly name: NameNode;
  readonly words: readonly string[];
  readonly meaning: string;
}

function suspects(model: Model): readonly Suspect[] {
  const classes = placed(model, 'defect').flatMap(({ node }) => node.classes.map(({ name }) => name));
  return [
    ...classes.map((name) => ({ name, words: ['open', 'closed'], meaning: 'it says whether there is a defect at all' })),
    ...placed(model, 'meter').map(({ node }) => ({ name: node.name, words: ['work'], meaning: '`of work` is time at work' })),
    ...placed(model, 'task').map(({ node }) => ({
      name: node.name,
      words: ['machine'],
      meaning: '`expect machine` is about the whole machine',
    })),
  ];
}
