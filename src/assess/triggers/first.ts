import type { FirstNode, NodeId } from '../../graph/rule-graph.js';
import { quiet, type Reach } from '../reach.js';
import { evaluate, type TriggerContext } from '../trigger.js';
import type { World } from '../world.js';
import { stagesAreMet } from './stages.js';

/** `first` until its stages are met, `then` afterwards; nothing further where there is no `then`. */
export function first(world: World, node: FirstNode, context: TriggerContext): Reach {
  const met = isMet(world, node.first, context);
  const chosen = met ? node.then : node.first;
  if (chosen === undefined) {
    const reach = evaluate(world, node.first, context);
    world.observe({ node: node.id, state: 'clear', entries: [], governing: node.first });
    return { ...quiet(node.id), governing: reach.governing };
  }
  const reach = evaluate(world, chosen, { ...context, fromStart: !met && context.fromStart });
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
