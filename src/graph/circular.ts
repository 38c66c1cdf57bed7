/**
 * Dependence between tasks that goes round in a circle.
 */
import { addTo } from '../base/gather.js';
import type { RuleGraph } from './rule-graph.js';

const ways = ['covers', 'restarts', 'follows', 'metBy'] as const;

/** One sentence without its full stop about the first way of depending that is circular; undefined where none is. */
export function circular({ tasks }: RuleGraph): string | undefined {
  const way = ways.find((each) => goesRound(new Map(tasks.map((task) => [task.id, task[each]]))));
  return way === undefined ? undefined : `its tasks go round in a circle by \`${way}\``;
}

/** Takes away, again and again, what depends on nothing that is left; a circle never goes. */
function goesRound(edges: ReadonlyMap<string, readonly string[]>): boolean {
  const open = new Map([...edges].map(([from, to]) => [from, to.length]));
  const users = new Map<string, string[]>();
  for (const [from, targets] of edges) {
    for (const to of targets) addTo(users, to, from);
  }
  const free = [...open].flatMap(([id, left]) => (left === 0 ? [id] : []));
  let gone = 0;
  for (let id = free.pop(); id !== undefined; id = free.pop()) {
    gone += 1;
    for (const user of users.get(id) ?? []) {
      const left = (open.get(user) ?? 0) - 1;
      open.set(user, left);
      if (left === 0) free.push(user);
    }
  }
  return gone < edges.size;
}
