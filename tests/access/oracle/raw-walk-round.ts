/* eslint-disable @typescript-eslint/no-non-null-assertion -- brute force is kept as plain as can be: a hole in an array would be a failing test */
/**
 * An independent walk-round from the rule graph itself: conditions are read straight from the nodes, every state of the raw product
 * space is a string, and Dijkstra does the rest. Shares no code with src/access.
 */
import type { RuleGraph } from '../../../src/graph/rule-graph.js';

type Named = Record<string, string>;

function truth(graph: RuleGraph, node: number | undefined, stance: Named): boolean {
  if (node === undefined) return true;
  const it = graph.nodes[node]!;
  switch (it.kind) {
    case 'position-is':
      return stance[it.part] === it.position;
    case 'and':
      return it.parts.every((part) => truth(graph, part, stance));
    case 'or':
      return it.parts.some((part) => truth(graph, part, stance));
    case 'not':
      return !truth(graph, it.part, stance);
    default:
      throw new Error(it.kind);
  }
}

function walks(graph: RuleGraph): (from: string | null, to: string | null) => number {
  const { places, walks: stated } = graph.access;
  const shortest = (from: string, to: string): number => {
    if (stated.length === 0) return 0;
    const best: Record<string, number> = { [from]: 0 };
    const open = new Set(places.map((place) => place.id));
    for (;;) {
      const here = [...open].filter((id) => id in best).sort((a, b) => best[a]! - best[b]!)[0];
      if (here === undefined) return Infinity;
      if (here === to) return best[here]!;
      open.delete(here);
      if (here !== from && places.find((place) => place.id === here)!.under !== undefined) continue;
      for (const walk of stated)
        for (const [a, b] of [
          [walk.from, walk.to],
          [walk.to, walk.from],
        ] as const)
          if (a === here) best[b] = Math.min(best[b] ?? Infinity, best[here]! + walk.seconds);
    }
  };
  return (from, to) => (from === null || to === null || from === to ? 0 : shortest(from, to));
}

/** The least seconds for the tasks (none of which covers another), or `null`. */
export function rawWalkRound(graph: RuleGraph, tasks: readonly string[], start: Named, goal: Named, place: string | null): number | null {
  const chosen = tasks.map((id) => graph.tasks.find((task) => task.id === id)!);
  const walk = walks(graph);
  const forbidden = (stance: Named): boolean => graph.access.nevers.some((never) => truth(graph, never.condition, stance));
  const isAloft = (stance: Named, part: string): boolean =>
    graph.access.parts.find((each) => each.id === part)!.positions.find((each) => each.name === stance[part])!.aloft;
  const hurts = (stance: Named, site: RuleGraph['tasks'][number]['site']): boolean => {
    const under = graph.access.places.find((each) => each.id === site.place)?.under;
    const parts = [...site.under.map((each) => each.part), ...(under === undefined ? [] : [under])];
    return parts.some((part) => !site.under.some((each) => each.part === part && each.meant !== undefined) && isAloft(stance, part));
  };
  const best = new Map<string, number>();
  const open = new Map<number, [Named, string | null, number][]>();
  const reach = (cost: number, stance: Named, here: string | null, done: number): void => {
    const key = JSON.stringify([graph.access.parts.map((part) => stance[part.id]), here, done]);
    if (cost === Infinity || (best.get(key) ?? Infinity) <= cost) return;
    best.set(key, cost);
    open.set(cost, [...(open.get(cost) ?? []), [stance, here, done]]);
  };
  reach(0, start, place, 0);
  while (open.size > 0) {
    const cost = Math.min(...open.keys());
    const batch = open.get(cost)!;
    open.delete(cost);
    for (const [stance, here, done] of batch) {
      if (best.get(JSON.stringify([graph.access.parts.map((part) => stance[part.id]), here, done]))! < cost) continue;
      if (done === 2 ** chosen.length - 1 && Object.entries(goal).every(([part, position]) => stance[part] === position)) return cost;
      for (const step of graph.access.steps)
        for (const [from, to] of step.back === undefined
          ? [[step.from, step.to]]
          : [
              [step.from, step.to],
              [step.to, step.from],
            ]) {
          const next = { ...stance, [step.part]: to! };
          if (stance[step.part] !== from || !truth(graph, step.while, { ...stance, [step.part]: step.from }) || forbidden(next)) continue;
          if (hurts(stance, step.site) || hurts(next, step.site)) continue;
          reach(cost + walk(here, step.site.place ?? null) + step.site.seconds, next, step.site.place ?? here, done);
        }
      chosen.forEach((task, index) => {
        const isTurn = task.follows.every((first) => !tasks.includes(first) || (done >> tasks.indexOf(first)) & 1);
        if ((done >> index) & 1 || !isTurn || forbidden(stance) || hurts(stance, task.site) || !truth(graph, task.stance, stance)) return;
        reach(cost + walk(here, task.site.place ?? null) + task.site.seconds, stance, task.site.place ?? here, done | (1 << index));
      });
    }
  }
  return null;
}
