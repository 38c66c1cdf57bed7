/**
 * Allowances, leads and stops of each task, beside its limits.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.js';
import type { MarginNode, TaskNode } from '../syntax/tree.js';
import type { CheckContext } from './context.js';
import type { TaskLimit } from './limits.js';
import type { Model } from './model.js';

/** A margin, and what the clause it stands in is called. */
export interface Margin {
  readonly word: string;
  readonly margin: MarginNode;
}

/** Judges each task beside all its limits. */
export function eachTask(
  { model, limits }: CheckContext,
  judge: (model: Model, node: TaskNode, limits: readonly TaskLimit[]) => readonly Diagnostic[],
): readonly Diagnostic[] {
  return limits().flatMap((each) => judge(model, each.node, each.limits));
}

/** All margins of a task. */
export function marginsIn({ clauses }: TaskNode): readonly Margin[] {
  return clauses.flatMap((clause) => {
    if (clause.kind === 'allow') return clause.sides.map(({ margin }) => ({ word: 'allowance', margin }));
    if (clause.kind === 'lead') return clause.margins.map((margin) => ({ word: 'lead', margin }));
    return clause.kind === 'hold' && clause.margin !== undefined ? [{ word: 'stop', margin: clause.margin }] : [];
  });
}
