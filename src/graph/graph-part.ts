import type { Shapes } from '../base/shape.js';
import type { Name } from './names-in-graph.js';
import type { Node, Origin, RuleGraph } from './rule-graph.js';

/** What reads some kinds of thing in a rule graph: their shapes, and what of them could be loose. What it has is its own business: give it to `graphReaderWith`. */
export interface GraphPart {
  readonly shapes: Shapes;
  /** The names in nodes of each kind. */
  readonly ofNodes: NamesOfNodes;
  /** Names elsewhere. */
  readonly names?: (graph: RuleGraph) => readonly Name[];
  /** One sentence without its full stop on what else is loose. */
  readonly loose?: (graph: RuleGraph) => string | undefined;
  /** Things inside others that were written somewhere. */
  readonly inner?: (graph: RuleGraph) => readonly { readonly origin: Origin }[];
}

type NamesOfNodes = { readonly [K in Node['kind']]?: (node: Extract<Node, { readonly kind: K }>) => readonly Name[] };

/** Of nodes that name nothing but nodes. */
export const namesNothing = (): readonly Name[] => [];
