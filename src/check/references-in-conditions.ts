/**
 * Which names a condition uses, and what each of them can mean there.
 */
import { assertNever } from '../base/assert-never.js';
import type { ConditionNode, FactNode, NameNode, SpanNode } from '../syntax/tree.js';
import type { NameKind } from './model.js';

/** A name in use, with the kinds of thing that can be meant. */
export interface Use {
  readonly name: NameNode;
  readonly kinds: readonly NameKind[];
}

/** What can be read. */
export const instrumentKinds: readonly NameKind[] = ['gauge', 'dipstick', 'meter'];

/** What can be said to *be* something: `panel off`, `flail-mower is on`, `seep is open`, `coolant is high`. */
const subjectKinds: readonly NameKind[] = ['position', 'attachment', 'defect', 'gauge', 'dipstick'];

/** The names in a condition, in the order written. The word after `is` is not among them: it belongs to its subject. */
export function usesInCondition(condition: ConditionNode): readonly Use[] {
  switch (condition.kind) {
    case 'and':
    case 'or':
      return condition.parts.flatMap(usesInCondition);
    case 'not':
      return usesInCondition(condition.part);
    default:
      return usesInFact(condition);
  }
}

function usesInFact(fact: FactNode): readonly Use[] {
  switch (fact.kind) {
    case 'is':
      return [{ name: fact.subject, kinds: subjectKinds }];
    case 'compare':
    case 'between':
      return [{ name: fact.subject, kinds: instrumentKinds }];
    case 'trend':
      return [{ name: fact.subject, kinds: instrumentKinds }, ...usesInSpan(fact.within)];
    case 'recent':
      return [{ name: fact.subject, kinds: recentKinds(fact.what) }, ...usesInSpan(fact.within)];
    case 'worse':
      return [{ name: fact.defect, kinds: ['defect'] }];
    case 'in':
      return [{ name: fact.duty, kinds: ['duty'] }];
    case 'machine':
      return usesInSpan(fact.span);
    case 'unworked':
      return [{ name: fact.task, kinds: ['task'] }];
    case 'at-work':
    case 'season':
      return [];
    default:
      return assertNever(fact);
  }
}

function recentKinds(what: 'read' | 'done' | 'happened'): readonly NameKind[] {
  switch (what) {
    case 'read':
      return instrumentKinds;
    case 'done':
      return ['task'];
    case 'happened':
      return ['event'];
    default:
      return assertNever(what);
  }
}

/** The meter or the duty that a span counts on. */
export function usesInSpan(span: SpanNode | undefined): readonly Use[] {
  if (span?.of === undefined) return [];
  if (span.of.kind === 'meter') return [{ name: span.of.name, kinds: ['meter'] }];
  return span.of.duty === undefined ? [] : [{ name: span.of.duty, kinds: ['duty'] }];
}
