import type { Node, NodeId } from '../graph/rule-graph.js';
import type { Explanation, RuleFacts } from './explanation.js';

/** The rule with this id, among the timing rules and the gate; `null` for an id that is not there. */
export function findRule(explanation: Pick<Explanation, 'rule' | 'gate'>, id: NodeId | null): RuleFacts | null {
  if (id === null) return null;
  return within(explanation.rule, id) ?? within(explanation.gate, id);
}

function within(rule: RuleFacts | null, id: NodeId): RuleFacts | null {
  if (rule === null || rule.node.id === id) return rule;
  for (const part of rule.parts) {
    const found = within(part, id);
    if (found !== null) return found;
  }
  return null;
}

/** Looks up the nodes of an explanation by id. */
export function nodesOf(explanation: Pick<Explanation, 'rule' | 'gate'>): (id: NodeId) => Node | undefined {
  return (id) => findRule(explanation, id)?.node;
}
