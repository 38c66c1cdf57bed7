import type { Node, NodeId, RuleGraph, Step, Task } from '../graph/rule-graph.js';

/** What a task needs opened up, and what each of that takes. */
export interface Openings {
  /** Task → steps that bring the machine from rest to where the task can be done, by id. */
  readonly of: ReadonlyMap<string, readonly string[]>;
  /** Step → minutes for it and for its way back. */
  readonly minutes: ReadonlyMap<string, number>;
}

/**
 * The steps that each task needs, from rest, and those that these need in turn.
 *
 * A reckoning for planning visits, not a walk-round: of alternatives (`or`) it takes the first, and it leaves walking out. What order is safe, and
 * what it takes in all, the walk-round says.
 */
export function openings(graph: Pick<RuleGraph, 'tasks' | 'access' | 'nodes'>): Openings {
  const minutes = new Map(graph.access.steps.map((step) => [step.id, (step.site.seconds * (step.back === undefined ? 1 : 2)) / 60]));
  return { of: new Map(graph.tasks.map((task) => [task.id, stepsFor(task, graph)])), minutes };
}

function stepsFor(task: Task, graph: Pick<RuleGraph, 'access' | 'nodes'>): readonly string[] {
  const steps = new Set<string>();
  const need = (condition: NodeId | undefined): void => {
    for (const { part, position } of positionsIn(condition, graph.nodes)) {
      for (const step of wayTo(part, position, graph.access)) {
        if (steps.has(step.id)) continue;
        steps.add(step.id);
        need(step.while);
      }
    }
  };
  need(task.stance);
  return [...steps].sort();
}

function positionsIn(
  condition: NodeId | undefined,
  nodes: readonly Node[],
): readonly { readonly part: string; readonly position: string }[] {
  const node = condition === undefined ? undefined : nodes[condition];
  if (node?.kind === 'position-is') return [node];
  if (node?.kind === 'and') return node.parts.flatMap((part) => positionsIn(part, nodes));
  return node?.kind === 'or' ? positionsIn(node.parts[0], nodes) : [];
}

/** The fewest steps of one part from rest to a position, breadth first; none where it rests there or cannot get there. */
function wayTo(part: string, position: string, access: RuleGraph['access']): readonly Step[] {
  const rest = access.rest[part];
  if (rest === undefined || rest === position) return [];
  const ways = new Map<string, readonly Step[]>([[rest, []]]);
  for (const [from, way] of ways) {
    if (from === position) return way;
    for (const step of access.steps) if (step.part === part && step.from === from && !ways.has(step.to)) ways.set(step.to, [...way, step]);
  }
  return [];
}
