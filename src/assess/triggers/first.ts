import type { FirstNode, NodeId } from '../../graph/rule-graph.js';
import type { Reach } from '../reach.js';
import type { TriggerContext } from '../trigger-context.js';
import type { World } from '../world.js';
import { stagesAreMet } from './stages.js';

/** `first` until its stages are met, `then` afterwards; nothing further where there is no `then`. */
export function first(world: World, node: FirstNode, context: TriggerContext): Reach {
  const met = isMet(world, node.first, context);
  // Looked at even when it is met: the record must show that it is.
  const early = context.evaluate(world, node.first, context);
  const [chosen, reach] =
    met && node.then !== undefined
      ? [node.then, context.evaluate(world, node.then, { ...context, fromStart: false })]
      : [node.first, early];
  world.observe({ node: node.id, state: reach.state, entries: [], governing: chosen });
  return reach;
}

function isMet(world: World, id: NodeId, context: TriggerContext): boolean {
  world.step();
  const node = world.trigger(id);
  switch (node.kind) {
    case 'stages':
      return stagesAreMet(world, node, context);
    case 'whichever':
      return node.parts.every((part: NodeId) => isMet(world, part, context));
    default:
      throw new Error(`\`first\` cannot hold a ${node.kind} node`);
  }
}
