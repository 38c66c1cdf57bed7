import type { WhenNode } from '../../graph/rule-graph.js';
import { notBefore } from '../../values/moment.js';
import { test } from '../condition.js';
import { lastDoingSince } from '../doings.js';
import { cannotTell, dueSince, quiet, type Reach } from '../reach.js';
import type { TriggerContext } from '../trigger-context.js';
import type { World } from '../world.js';

/** Due while a condition holds on evidence that no doing has answered (docs/meaning.md §6). */
export function when(world: World, node: WhenNode, context: TriggerContext): Reach {
  const found = test(world, node.condition);
  if (found.truth === 'false') {
    world.observe({ node: node.id, state: 'clear', entries: found.entries });
    return quiet(node.id);
  }
  const last = lastDoingSince(world, context.task, found.evidence);
  if (last !== undefined && (found.evidence === null || notBefore(last.when, found.evidence))) {
    const [by = ''] = last.entries;
    world.observe({
      node: node.id,
      state: 'clear',
      entries: [...new Set([...found.entries, ...last.entries])],
      note: { is: 'answered', by, when: last.when },
    });
    return quiet(node.id);
  }
  const unanswered = {
    entries: [...new Set([...found.entries, ...(last?.entries ?? [])])],
    ...(last === undefined ? {} : { stood: [{ on: 'moment', at: last.when } as const] }),
  };
  if (found.truth === 'unknown') {
    world.observe({ node: node.id, state: 'unknown', ...unanswered, missing: found.missing });
    return cannotTell(node.id, found.missing);
  }
  world.observe({ node: node.id, state: 'due', ...unanswered, reachedAt: found.evidence });
  return dueSince(node.id, found.evidence);
}
