import type { NodeId } from '../graph/rule-graph.js';
import { carried } from './kinds.js';
import type { Reach } from './reach.js';
import type { TriggerContext } from './trigger-context.js';
import type { World } from './world.js';

/** Evaluates a trigger node for one task; each kind has a file of its own. */
export function evaluate(world: World, id: NodeId, context: TriggerContext): Reach {
  world.step();
  const node = world.trigger(id);
  // Which kind judges which node the table says; the type checker cannot follow it through the look-up.
  return carried(world.kinds.triggers, node.kind)(world, node as never, context);
}
