import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { NameNode } from '../../syntax/tree.js';
import type { Rule } from '../context.js';
import { placed, type Model } from '../model.js';
import { diagnostic } from '../report.js';
import { kindName, ticked } from '../words.js';

/** A name belongs to one thing of a kind; so does a position, a class or a band within its owner. */
export const duplicateName: Rule = {
  codes: ['duplicateName'],
  scope: 'schedule',
  check: ({ model, table }) => [
    ...table.duplicates.map(({ later, earlier }) =>
      diagnostic('duplicateName', {
        at: later.at,
        message: `${ticked(later.name)} is already ${kindName(earlier.kind)}.`,
        labels: [{ at: earlier.at, text: 'declared here first' }],
        help: 'Give one of the two another name.',
      }),
    ),
    ...innerNames(model).flatMap(repeated),
  ],
};

function innerNames(model: Model): readonly (readonly NameNode[])[] {
  return [
    ...placed(model, 'position').map(({ node }) => node.positions.map(({ name }) => name)),
    ...placed(model, 'defect').map(({ node }) => node.classes.map(({ name }) => name)),
    ...placed(model, 'defect').map(({ node }) => node.rules.map(({ name }) => name)),
    ...placed(model, 'gauge').map(({ node }) => node.bands.map(({ name }) => name)),
  ];
}

function repeated(names: readonly NameNode[]): readonly Diagnostic[] {
  const first = new Map<string, NameNode>();
  return names.flatMap((name) => {
    const earlier = first.get(name.text);
    if (earlier === undefined) {
      first.set(name.text, name);
      return [];
    }
    return [
      diagnostic('duplicateName', {
        at: name.at,
        message: `${ticked(name.text)} stands here twice.`,
        labels: [{ at: earlier.at, text: 'first here' }],
        help: 'Take one of the two out.',
      }),
    ];
  });
}
