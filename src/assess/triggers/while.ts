import type { WhileNode } from '../../graph/rule-graph.js';
import { test } from '../condition.js';
import { cannotTell, quiet, type Reach } from '../reach.js';
import type { TriggerContext } from '../trigger-context.js';
import type { World } from '../world.js';

/** A limit that counts only while a condition holds. */
export function whileHolds(world: World, node: WhileNode, context: TriggerContext): Reach {
  const found = test(world, node.condition);
  if (found.truth === 'false') {
    world.observe({ node: node.id, state: 'clear', entries: found.entries, note: { is: 'condition-off' } });
    return quiet(node.id);
  }
  const reach = context.evaluate(world, node.then, context);
  if (found.truth === 'true') {
    world.observe({ node: node.id, state: reach.state, governing: node.then, entries: found.entries });
    return reach;
  }
  const isIdle = reach.state === 'clear' || reach.state === 'coming-up';
  world.observe({
    node: node.id,
    state: isIdle ? 'clear' : 'unknown',
    governing: node.then,
    entries: found.entries,
    missing: found.missing,
  });
  const stops = reach.stops.map((stop) => ({ ...stop, truth: 'unknown' as const }));
  return isIdle ? quiet(node.id) : cannotTell(node.id, found.missing, 'unknown', stops);
}
