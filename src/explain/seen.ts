import type { Observation } from '../assess/assessment.js';
import type { NodeId } from '../graph/rule-graph.js';

/** As many observations as are gone through sooner than they are laid out. */
const FEW = 8;

/** What a run saw of one task, by the node that it saw. */
export class Seen {
  private readonly byNode: ReadonlyMap<NodeId, Observation> | null;

  constructor(private readonly observations: readonly Observation[]) {
    this.byNode = observations.length <= FEW ? null : new Map(observations.map((seen) => [seen.node, seen]));
  }

  /** Of several of one node the last. */
  get(node: NodeId): Observation | undefined {
    if (this.byNode !== null) return this.byNode.get(node);
    for (let at = this.observations.length - 1; at >= 0; at -= 1) if (this.observations[at]?.node === node) return this.observations[at];
    return undefined;
  }
}
