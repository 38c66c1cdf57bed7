import type { Rule } from '../context.js';
import { placed } from '../model.js';
import { readingsInExample } from '../quantities/example.js';
import { inLimit, problems, quantityCodes } from './quantities.js';

/** As the quantities of rules, so those of worked examples. */
export const quantitiesInExamples: Rule = {
  codes: quantityCodes,
  scope: 'declaration',
  check: ({ model }) =>
    placed(model, 'example').flatMap(({ node, home }) =>
      problems(readingsInExample(model, home, node, (limit) => inLimit(model, home, limit))),
    ),
};
