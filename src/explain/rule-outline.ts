/**
 * The rules of a task as a tree, in the order in which the author wrote them.
 */
import { partsOf } from '../graph/node-references.js';
import type { Node, NodeId, Origin, RuleGraph } from '../graph/rule-graph.js';
import type { Place } from './explanation.js';

/** A rule with its place in the schedule, and the rules that it is made of. */
export interface RuleOutline {
  readonly node: Node;
  readonly place: Place;
  readonly parts: readonly RuleOutline[];
}

/** The tree below one node; `null` for a node that the graph does not have. */
export function ruleOutline(graph: RuleGraph, id: NodeId): RuleOutline | null {
  const node = graph.nodes[id];
  if (node === undefined) return null;
  return { node, place: placeOf(graph, node.origin), parts: partsOf(node).flatMap((part) => ruleOutline(graph, part) ?? []) };
}

/** Where something was written, with the path of its file. */
export function placeOf(graph: RuleGraph, origin: Origin): Place {
  const { line, column, text } = origin;
  return { file: graph.sources[origin.source]?.path ?? '', line, column, text };
}
