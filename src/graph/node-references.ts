/**
 * Which nodes a node refers to, and what each has to be.
 */
import type { Condition, Node, NodeId, Trigger } from './rule-graph.js';

const conditionKinds: ReadonlySet<Node['kind']> = new Set<Condition['kind']>([
  'and',
  'or',
  'not',
  'position-is',
  'attachment-is',
  'defect-is',
  'duty-is',
  'compare',
  'trend',
  'recent',
  'age',
  'idle',
  'unworked',
  'at-work',
  'season',
]);

/** True for a node that is true, false or unknown; false for one that says when a task is due. */
export function isCondition(node: Node): node is Condition {
  return conditionKinds.has(node.kind);
}

/** Whether a node says when a task is due; the others are true, false or unknown. */
export function isTrigger(node: Node): node is Trigger {
  return !isCondition(node);
}

/** The triggers that a node refers to. */
export function triggersIn(node: Node): readonly NodeId[] {
  switch (node.kind) {
    case 'first':
      return node.then === undefined ? [node.first] : [node.first, node.then];
    case 'whichever':
    case 'any':
      return node.parts;
    case 'while':
      return [node.then];
    default:
      return [];
  }
}

/** The conditions that a node refers to. */
export function conditionsIn(node: Node): readonly NodeId[] {
  switch (node.kind) {
    case 'and':
    case 'or':
      return node.parts;
    case 'not':
      return [node.part];
    case 'when':
    case 'while':
      return [node.condition];
    default:
      return [];
  }
}
