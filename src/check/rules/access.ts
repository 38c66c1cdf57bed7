import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { ConditionNode, StanceItemNode } from '../../syntax/tree.js';
import type { Rule } from '../context.js';
import { definitionsOf, placed, type Model } from '../model.js';
import { diagnostic } from '../report.js';
import { listed, ticked } from '../words.js';

/** Conditions of steps, stances and never-rules are about positions only. */
export const notAPosition: Rule = {
  codes: ['notAPosition'],
  check: ({ model }) => accessConditions(model).flatMap((condition) => strangers(model, condition)),
};

function accessConditions(model: Model): readonly ConditionNode[] {
  return [
    ...placed(model, 'never').map(({ node }) => node.condition),
    ...placed(model, 'step').flatMap(({ node }) =>
      node.clauses.flatMap((clause) => (clause.kind === 'while-stance' ? [clause.condition] : [])),
    ),
    ...placed(model, 'task').flatMap(({ node }) => node.clauses.flatMap((clause) => (clause.kind === 'with' ? [clause.condition] : []))),
  ];
}

function strangers(model: Model, condition: ConditionNode): readonly Diagnostic[] {
  if (condition.kind === 'and' || condition.kind === 'or') return condition.parts.flatMap((part) => strangers(model, part));
  if (condition.kind === 'not') return strangers(model, condition.part);
  if (condition.kind === 'is') {
    const subject = model.meaning.get(condition.subject);
    if (subject === undefined || subject.kind === 'position') return [];
  }
  return [
    diagnostic('notAPosition', {
      at: condition.at,
      message: 'This is not about the position of a moving part.',
      help: 'For a task, say it with `only if`; for a step or a never-rule, in positions.',
    }),
  ];
}

/** Every moving part has its position at rest. */
export const restIncomplete: Rule = {
  codes: ['restIncomplete'],
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

/** One position for each part, at rest and at work. */
export const restTwice: Rule = {
  codes: ['restTwice'],
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

function itemsOf(model: Model, which: 'rest' | 'work'): readonly StanceItemNode[] {
  return placed(model, 'rest').flatMap(({ node }) => (node.which === which ? node.items : []));
}

/** A step changes its part. */
export const stepGoesNowhere: Rule = {
  codes: ['stepGoesNowhere'],
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

/** One time for each pair of places. */
export const walkRepeated: Rule = {
  codes: ['walkRepeated'],
  check: ({ model }) => {
    const walks = placed(model, 'walk').map(({ node }) => ({
      node,
      ends: [model.meaning.get(node.from)?.id ?? '', model.meaning.get(node.to)?.id ?? ''].sort().join(' '),
    }));
    return walks.flatMap(({ node, ends }, index) => {
      if (node.from.text === node.to.text)
        return [
          diagnostic('walkRepeated', {
            at: node.to.at,
            message: `This walk ends where it begins, at ${ticked(node.to.text)}.`,
            help: 'Write the place that it leads to.',
          }),
        ];
      const earlier = walks.slice(0, index).find((other) => other.ends === ends && !ends.startsWith(' '));
      if (earlier === undefined) return [];
      return [
        diagnostic('walkRepeated', {
          at: node.at,
          message: 'The walk between these two places is already given.',
          labels: [{ at: earlier.node.at, text: 'here' }],
          help: 'Take one of the two out; it serves in either direction.',
        }),
      ];
    });
  },
};
