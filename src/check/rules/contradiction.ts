import type { Diagnostic } from '../../diagnostics/diagnostic.js';
import type { Range } from '../../graph/rule-graph.js';
import type { ConditionNode, FactNode } from '../../syntax/tree.js';
import { clausesOf } from '../clauses-of.js';
import type { Rule } from '../context.js';
import { placed, type Definition, type Model } from '../model.js';
import { edgesOf, rangeOfFact } from '../quantities/level.js';
import { valueOf } from '../quantities/read.js';
import { asInstrument } from '../quantities/readings.js';
import { diagnostic } from '../report.js';
import type { NodeIndex } from '../walk.js';
import { ticked } from '../words.js';

interface Claim {
  readonly fact: FactNode;
  readonly subject: Definition;
  /** The word said of a part, an attachment or a defect. */
  readonly word?: string;
  /** Or the range of a reading. */
  readonly range?: Range;
}

/** What is joined by `and`, in one condition or in the `only if` clauses of one task, can all be true at one time. */
export const contradiction: Rule = {
  codes: ['contradiction'],
  scope: 'declaration',
  check: ({ model, nodes }) => conjunctions(model, nodes).flatMap((facts) => clash(model, facts)),
};

function conjunctions(model: Model, nodes: NodeIndex): readonly (readonly FactNode[])[] {
  const gates = placed(model, 'task').map(({ node }) => clausesOf(node.clauses, 'only-if'));
  return [
    ...nodes.all<Extract<ConditionNode, { parts: unknown }>>('and').map(joined),
    ...gates.filter(({ length }) => length > 1).map((all) => all.flatMap(({ condition }) => joined(condition))),
  ];
}

/** The facts that all have to be true for a condition to be; what is under `or` or `not` is left out. */
function joined(condition: ConditionNode): readonly FactNode[] {
  switch (condition.kind) {
    case 'and':
    case 'or':
      return condition.kind === 'and' ? condition.parts.flatMap(joined) : [];
    case 'not':
      return [];
    default:
      return [condition];
  }
}

function clash(model: Model, facts: readonly FactNode[]): readonly Diagnostic[] {
  const claims = facts.flatMap((fact) => claimOf(model, fact));
  for (const [index, later] of claims.entries()) {
    const earlier = claims.slice(0, index).find((other) => other.subject === later.subject && apart(other, later));
    if (earlier === undefined) continue;
    const message = `${ticked(later.subject.name)} cannot be both at once, so this is never true.`;
    return [
      diagnostic('contradiction', {
        at: later.fact.at,
        message,
        labels: [{ at: earlier.fact.at, text: 'and this' }],
        help: 'Join the two by `or`, or correct one of them.',
      }),
    ];
  }
  return [];
}

function claimOf(model: Model, fact: FactNode): readonly Claim[] {
  if (fact.kind !== 'is' && fact.kind !== 'compare' && fact.kind !== 'between') return [];
  const subject = model.meaning.get(fact.subject);
  if (subject === undefined) return [];
  const instrument = asInstrument(subject);
  if (instrument === undefined) return fact.kind === 'is' ? [{ fact, subject, word: fact.word.text }] : [];
  const range = valueOf(fact.kind === 'is' ? edgesOf(fact.word, instrument) : rangeOfFact(fact, instrument));
  return range === undefined ? [] : [{ fact, subject, range }];
}

function apart(a: Claim, b: Claim): boolean {
  if (a.range !== undefined && b.range !== undefined) return below(a.range, b.range) || below(b.range, a.range);
  if (a.word === undefined || b.word === undefined || a.word === b.word) return false;
  // A defect that is open is of some class.
  return a.subject.kind !== 'defect' || (a.word !== 'open' && b.word !== 'open');
}

function below(a: Range, b: Range): boolean {
  if (a.to === undefined || b.from === undefined) return false;
  return a.to < b.from || (a.to === b.from && !(a.toIncluded && b.fromIncluded));
}
