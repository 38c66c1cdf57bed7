import type { NodeId } from '../graph/rule-graph.js';
import type { Finding } from './finding.js';
import { carried } from './kinds.js';
import type { World } from './world.js';

/** Evaluates a condition node, three-valued (Kleene), and writes it into the record. */
export function test(world: World, id: NodeId): Finding {
  world.step();
  const node = world.condition(id);
  // As with triggers: the table pairs each kind with its nodes.
  const found = carried(world.kinds.conditions, node.kind)(world, node as never, test);
  world.observe({
    node: id,
    truth: found.truth,
    since: found.evidence,
    entries: found.entries,
    ...(found.missing.length === 0 ? {} : { missing: found.missing }),
    ...(found.note === undefined ? {} : { note: found.note }),
    ...(found.stood === undefined ? {} : { stood: found.stood }),
  });
  return found;
}
