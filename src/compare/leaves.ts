/** The limits of a task, each with a key by which its counterpart in another edition is found. */
import { assertNever } from '../base/assert-never.js';
import { meaningText } from '../graph/meaning-fingerprint.js';
import type { Amount, NodeId, RuleGraph, Trigger } from '../graph/rule-graph.js';

export interface Leaf {
  /** Equal keys: the same kind of limit on the same axis, reached by the same way through the rules. */
  readonly key: string;
  readonly node: Trigger;
  /** Whether the limit asks for less the longer it is (`last`: only when all others are reached too). */
  readonly under: 'first' | 'last';
}

/** All limits, occasions and conditions below a trigger, in the order written; keys are made distinct by number. */
export function leavesOf(graph: RuleGraph, trigger: NodeId | undefined): readonly Leaf[] {
  if (trigger === undefined) return [];
  const seen = new Map<string, number>();
  return below(graph, trigger, '', 'first').map((leaf) => {
    const count = seen.get(leaf.key) ?? 0;
    seen.set(leaf.key, count + 1);
    return count === 0 ? leaf : { ...leaf, key: `${leaf.key} #${count + 1}` };
  });
}

function below(graph: RuleGraph, id: NodeId, path: string, under: 'first' | 'last'): readonly Leaf[] {
  const node = graph.nodes[id] as Trigger | undefined;
  if (node === undefined) return [];
  switch (node.kind) {
    case 'any':
      return node.parts.flatMap((part) => below(graph, part, path, under));
    case 'whichever':
      return node.parts.flatMap((part) => below(graph, part, path, node.mode));
    case 'first':
      return [
        ...below(graph, node.first, `${path}first/`, under),
        ...(node.then === undefined ? [] : below(graph, node.then, path, under)),
      ];
    case 'while':
      return below(graph, node.then, `${path}while ${meaningText(node.condition, graph.nodes, 'condition')}/`, under);
    case 'interval':
      return [{ key: `${path}every ${axisKey(node.amount)}`, node, under }];
    case 'duty-mix':
      return [{ key: `${path}every meter ${node.meter}`, node, under }];
    case 'stages':
      return [
        {
          key: `${path}stages ${meaningText(node.from, graph.nodes)} ${node.amounts[0] === undefined ? '' : axisKey(node.amounts[0])}`,
          node,
          under,
        },
      ];
    case 'marks':
      return [{ key: `${path}marks ${node.amount.meter}`, node, under }];
    case 'event':
      return [{ key: `${path}event ${node.event}`, node, under }];
    case 'shortly-before':
      return [{ key: `${path}shortly before ${node.of}`, node, under }];
    case 'calendar-marks':
    case 'calendar-window':
      return [{ key: `${path}calendar`, node, under }];
    case 'sooner':
      return [{ key: `${path}sooner ${node.dipstick}`, node, under }];
    case 'asked':
      return [{ key: `${path}asked ${meaningText(node.by, graph.nodes)}`, node, under }];
    case 'occasion':
    case 'attaching':
    case 'refuelling':
    case 'when':
      return [{ key: `${path}${meaningText(id, graph.nodes, 'trigger')}`, node, under }];
    default:
      return assertNever(node);
  }
}

function axisKey(amount: Amount): string {
  switch (amount.on) {
    case 'meter':
      return `meter ${amount.meter}`;
    case 'work':
      return `work ${amount.duty ?? ''}`;
    case 'calendar':
      return 'calendar';
    default:
      return assertNever(amount);
  }
}
