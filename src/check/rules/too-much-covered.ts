import { clausesOf } from '../clauses-of.js';
import type { Rule } from '../context.js';
import { tasksIn } from '../limits.js';
import type { TaskNode } from '../../syntax/tree.js';
import { diagnostic } from '../report.js';
import { tasksNamed } from '../tasks-named.js';
import { ticked } from '../words.js';

/** How many times a task may be covered by another in all, directly or through others: the graph spells each of them out. */
const MOST_COVERED = 50_000;

/** A long chain of tasks that cover one another grows with the square of its length, so what is covered in all is bounded. */
export const tooMuchCovered: Rule = {
  codes: ['limitReached'],
  scope: 'schedule',
  check: ({ model }) => {
    const covering = tasksIn(model).filter(({ node }) => clausesOf(node.clauses, 'covers').length > 0);
    const direct = new Map(covering.map(({ node }) => [node, tasksNamed(model, node, 'covers').map(({ task }) => task)]));
    let left = MOST_COVERED;
    for (const node of direct.keys()) {
      left -= countReached(direct, node, left);
      if (left < 0) return [describe(node)];
    }
    return [];
  },
};

/** How many tasks can be reached; as soon as they are more than `most` the count ends there. */
function countReached(direct: ReadonlyMap<TaskNode, readonly TaskNode[]>, from: TaskNode, most: number): number {
  const reached = new Set(direct.get(from));
  for (const next of reached) {
    if (reached.size > most) break;
    for (const further of direct.get(next) ?? []) reached.add(further);
  }
  return reached.size;
}

function describe({ name }: TaskNode): ReturnType<typeof diagnostic> {
  return diagnostic('limitReached', {
    at: name.at,
    message: `What tasks cover, and what that covers in turn, may come to ${MOST_COVERED} in all, and ${ticked(name.text)} goes past that.`,
    help: 'Let one task cover the others directly, and cut long chains of `covers`.',
  });
}
