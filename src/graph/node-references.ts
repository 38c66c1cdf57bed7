/**
 * Which nodes a node refers to, and what each has to be.
 *
 * The kinds that refer to none need not be named here: a test holds this file to what the schema says of each member that is a node's id.
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

/** What a node refers to others by, whatever its kind. */
type Members = Pick<Node, 'id'> & Partial<Readonly<Record<(typeof MEMBERS)[number], NodeId | readonly NodeId[] | string>>>;

/** In the order in which they are written. Of a condition on a moving part, `part` is that part's name. */
const MEMBERS = ['part', 'parts', 'condition', 'first', 'then'] as const;

/** The nodes that a node is made of, in the order they were written. */
export function partsOf(node: Node): readonly NodeId[] {
  const members: Members = node;
  const ids: NodeId[] = [];
  for (const name of MEMBERS) {
    const member = members[name];
    if (typeof member === 'number') ids.push(member);
    else if (typeof member === 'object') ids.push(...member);
  }
  return ids;
}

/** The triggers that a node refers to. */
export function triggersIn(node: Node): readonly NodeId[] {
  switch (node.kind) {
    case 'first':
    case 'whichever':
    case 'any':
      return partsOf(node);
    case 'while':
      return [node.then];
    default:
      return [];
  }
}

/** The conditions that a node refers to. */
export function conditionsIn(node: Node): readonly NodeId[] {
  switch (node.kind) {
    case 'first':
    case 'whichever':
    case 'any':
      return [];
    case 'while':
      return [node.condition];
    default:
      return partsOf(node);
  }
}
