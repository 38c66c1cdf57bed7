import type { Node, NodeId } from '../graph/rule-graph.js';

/** The node of the rule graph that an id stands for; `undefined` for an id without one. */
export type NodeById = (id: NodeId) => Node | undefined;
