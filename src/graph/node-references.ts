/**
 * Which nodes a node refers to, and what each has to be.
 */
import { assertNever } from '../base/assert-never.js';
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

/** The nodes that a node is made of, in the order they were written. */
export function partsOf(node: Node): readonly NodeId[] {
  const { conditions, triggers } = referencesOf(node);
  return [...conditions, ...triggers];
}

/** The triggers that a node refers to. */
export function triggersIn(node: Node): readonly NodeId[] {
  return referencesOf(node).triggers;
}

/** The conditions that a node refers to. */
export function conditionsIn(node: Node): readonly NodeId[] {
  return referencesOf(node).conditions;
}

/** What a node refers to, by what each has to be. Where there are both, the condition is written first. */
interface References {
  readonly conditions: readonly NodeId[];
  readonly triggers: readonly NodeId[];
}

const NOTHING: References = { conditions: [], triggers: [] };

function referencesOf(node: Node): References {
  switch (node.kind) {
    case 'and':
    case 'or':
      return { conditions: node.parts, triggers: [] };
    case 'not':
      return { conditions: [node.part], triggers: [] };
    case 'when':
      return { conditions: [node.condition], triggers: [] };
    case 'while':
      return { conditions: [node.condition], triggers: [node.then] };
    case 'first':
      return { conditions: [], triggers: node.then === undefined ? [node.first] : [node.first, node.then] };
    case 'whichever':
    case 'any':
      return { conditions: [], triggers: node.parts };
    case 'interval':
    case 'duty-mix':
    case 'stages':
    case 'marks':
    case 'calendar-marks':
    case 'calendar-window':
    case 'occasion':
    case 'attaching':
    case 'refuelling':
    case 'event':
    case 'asked':
    case 'sooner':
    case 'position-is':
    case 'attachment-is':
    case 'defect-is':
    case 'duty-is':
    case 'compare':
    case 'trend':
    case 'recent':
    case 'age':
    case 'idle':
    case 'unworked':
    case 'at-work':
    case 'season':
      return NOTHING;
    default:
      return assertNever(node);
  }
}
