/**
 * Which names a declaration uses, and what each can mean where it stands.
 */
import { assertNever } from '../base/assert-never.js';
import type { DeclarationNode, ExampleNode, NameNode } from '../syntax/tree.js';
import { usesInCondition, usesInSpan, type Use } from './references-in-conditions.js';
import { usesInOutcome, usesInStepClause, usesInTaskClause } from './references-in-tasks.js';
import type { NameKind } from './model.js';

/** The names that a worked example uses, in the order written. */
export type ExampleUses = (example: ExampleNode) => readonly Use[];

/** The names that a declaration uses (not the one it gives), in the order written. */
export function usesIn(node: DeclarationNode, ofExample: ExampleUses): readonly Use[] {
  switch (node.kind) {
    case 'meter':
    case 'duty':
    case 'attachment':
    case 'position':
    case 'supply':
    case 'hazard':
    case 'event':
      return [];
    case 'gauge':
    case 'dipstick':
      return usesInSpan(node.fresh);
    case 'rest':
      return node.items.map(({ part }) => use(part, 'position'));
    case 'place':
      return node.under === undefined ? [] : [use(node.under, 'position')];
    case 'walk':
      return [use(node.from, 'place'), use(node.to, 'place')];
    case 'step':
      return [use(node.part, 'position'), ...node.clauses.flatMap(usesInStepClause)];
    case 'never':
    case 'stop':
      return usesInCondition(node.condition);
    case 'defect':
      return node.rules.flatMap(({ outcome }) => usesInOutcome(outcome));
    case 'task':
      return node.clauses.flatMap(usesInTaskClause);
    case 'change':
      // Its clauses are the changed task's by now, and are looked at there.
      return [use(node.name, 'task')];
    case 'remove':
      return [];
    case 'example':
      return ofExample(node);
    default:
      return assertNever(node);
  }
}

function use(name: NameNode, kind: NameKind): Use {
  return { name, kinds: [kind] };
}
