import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { ConditionNode } from '../../syntax/tree.js';
import { clausesOf } from '../clauses-of.js';
import type { Rule } from '../context.js';
import { placed, type Model } from '../model.js';
import { diagnostic } from '../report.js';

/** Conditions of steps, stances and never-rules are about positions only. */
export const notAPosition: Rule = {
  codes: ['notAPosition'],
  scope: 'declaration',
  check: ({ model }) => accessConditions(model).flatMap((condition) => strangers(model, condition)),
};

function accessConditions(model: Model): readonly ConditionNode[] {
  return [
    ...placed(model, 'never').map(({ node }) => node.condition),
    ...placed(model, 'step').flatMap(({ node }) => clausesOf(node.clauses, 'while-stance').map(({ condition }) => condition)),
    ...placed(model, 'task').flatMap(({ node }) => clausesOf(node.clauses, 'with').map(({ condition }) => condition)),
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
