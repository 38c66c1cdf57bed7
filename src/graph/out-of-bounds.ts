/**
 * How much a graph may hold, so that one that was made to hurt is refused and not endured.
 */
import { partsOf } from './node-references.js';
import type { RuleGraph } from './rule-graph.js';

const MOST_TASKS = 5000;
const MOST_NODES = 50_000;
/** The deepest that nodes lie below one another; the language allows 64 parentheses. */
const DEEPEST = 200;
/** Nodes that one node comes to when all that it shares with others is written out. */
const MOST_WRITTEN_OUT = 50_000;

const MOST_PLACES = 200;
/** Times that a task is covered by another, in all. */
const MOST_COVERED = 50_000;

/** One sentence without its full stop about the first list that is longer than its bound: to be asked before anything goes through the lists. */
export function tooMany({ tasks, nodes, access }: RuleGraph): string | undefined {
  if (tasks.length > MOST_TASKS) return `it has ${tasks.length} tasks, and the limit is ${MOST_TASKS}`;
  if (nodes.length > MOST_NODES) return `it has ${nodes.length} nodes, and the limit is ${MOST_NODES}`;
  const places = access.places.length;
  if (places > MOST_PLACES) return `it has ${places} places, and the limit is ${MOST_PLACES}`;
  const covered = tasks.reduce((sum, { covers }) => sum + covers.length, 0);
  return covered > MOST_COVERED ? `its tasks cover others ${covered} times, and the limit is ${MOST_COVERED}` : undefined;
}

/** One sentence without its full stop about the first node that lies too deep or comes to too much. For graphs whose nodes refer to earlier ones only. */
export function outOfBounds({ nodes }: RuleGraph): string | undefined {
  const depths: number[] = [];
  const sizes: number[] = [];
  for (const [index, node] of nodes.entries()) {
    let [depth, size] = [0, 1];
    for (const below of partsOf(node)) {
      depth = Math.max(depth, depths[below] ?? 0);
      size += sizes[below] ?? 0;
    }
    depths.push(depth + 1);
    sizes.push(size);
    if (depth + 1 > DEEPEST) return `\`nodes.${index}\` lies more than ${DEEPEST} deep`;
    if (size > MOST_WRITTEN_OUT) return `\`nodes.${index}\` comes to more than ${MOST_WRITTEN_OUT} nodes when it is written out`;
  }
  return undefined;
}
