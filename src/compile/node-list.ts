/**
 * The nodes of a graph as they are made.
 *
 * INVARIANT: a node is added after its children, so ids are a topological order.
 */
import type { Node, NodeId } from '../graph/rule-graph.js';

export interface NodeList {
  readonly nodes: readonly Node[];
  /** Adds a node and says its id. */
  readonly add: (node: Unnumbered) => NodeId;
}

type WithoutId<N> = N extends Node ? Omit<N, 'id'> : never;
export type Unnumbered = WithoutId<Node>;

export function nodeList(): NodeList {
  const nodes: Node[] = [];
  const add = (node: Unnumbered): NodeId => nodes.push({ id: nodes.length, ...node }) - 1;
  return { nodes, add };
}
