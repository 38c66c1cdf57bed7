import { describe, expect, it } from 'vitest';
import type { RuleGraph } from '../../src/graph/rule-graph.js';
import { filesIn, graphOfSchedule } from './schedule-files.js';

/**
 * A plain breadth-first walk over whole stances, written apart from src/access, so that the example schedules are known to be sound
 * whatever the search does.
 */
type Stance = Readonly<Record<string, string>>;

function holds(graph: RuleGraph, node: number | undefined, stance: Stance): boolean {
  const condition = node === undefined ? undefined : graph.nodes[node];
  if (condition === undefined) return true;
  switch (condition.kind) {
    case 'and':
      return condition.parts.every((part) => holds(graph, part, stance));
    case 'or':
      return condition.parts.some((part) => holds(graph, part, stance));
    case 'not':
      return !holds(graph, condition.part, stance);
    case 'position-is':
      return stance[condition.part] === condition.position;
    default:
      throw new Error(`a ${condition.kind} in a stance`);
  }
}

const key = (stance: Stance): string => JSON.stringify(stance);

/** Stances one step away, forwards or back, that break no never-rule. */
function exits(graph: RuleGraph, stance: Stance): readonly { readonly step: string; readonly to: Stance }[] {
  return graph.access.steps.flatMap((step) => {
    const ways = [[step.from, step.to], ...(step.back === undefined ? [] : [[step.to, step.from]])];
    return ways.flatMap(([from, to = '']) => {
      const next = { ...stance, [step.part]: to };
      if (stance[step.part] !== from || !holds(graph, step.while, stance) || !holds(graph, step.while, next)) return [];
      return graph.access.nevers.some((never) => holds(graph, never.condition, next)) ? [] : [{ step: step.id, to: next }];
    });
  });
}

function reachable(graph: RuleGraph): ReadonlyMap<string, Stance> {
  const seen = new Map([[key(graph.access.rest), graph.access.rest]]);
  for (const stance of seen.values()) for (const { to } of exits(graph, stance)) if (!seen.has(key(to))) seen.set(key(to), to);
  return seen;
}

function leadsToRest(graph: RuleGraph, from: Stance): boolean {
  const seen = new Map([[key(from), from]]);
  for (const stance of seen.values()) for (const { to } of exits(graph, stance)) if (!seen.has(key(to))) seen.set(key(to), to);
  return seen.has(key(graph.access.rest));
}

const machines = [...filesIn('', '.due'), ...filesIn('attachments/', '.due')].filter((path) => graphOfSchedule(path).access.parts.length > 0);

describe.each(machines)('the way to the work on %s', (path) => {
  const graph = graphOfSchedule(path);
  const stances = [...reachable(graph).values()];

  it('reaches every task, and the machine at work, from rest', () => {
    const beyond = graph.tasks.filter(({ stance }) => !stances.some((each) => holds(graph, stance, each))).map(({ id }) => id);
    expect(beyond).toEqual([]);
    const { work } = graph.access;
    expect(work === undefined || stances.some((each) => Object.entries(work).every(([part, position]) => each[part] === position))).toBe(true);
  });

  it('leads back to rest from wherever it led', () => {
    expect(stances.filter((from) => !leadsToRest(graph, from))).toEqual([]);
  });

  it('has no step that nothing needs', () => {
    const idle = graph.access.steps.filter(({ id }) => {
      const without: RuleGraph = { ...graph, access: { ...graph.access, steps: graph.access.steps.filter((each) => each.id !== id) } };
      const left = [...reachable(without).values()];
      const { work } = graph.access;
      const atWork = work === undefined || left.some((each) => Object.entries(work).every(([name, position]) => each[name] === position));
      const doesAll = graph.tasks.every(({ stance }) => left.some((each) => holds(graph, stance, each)));
      return atWork && doesAll && left.every((each) => leadsToRest(without, each));
    });
    expect(idle.map(({ id }) => id)).toEqual([]);
  });

  it('puts nobody under a part that is aloft and not blocked', () => {
    const aloft = graph.access.parts.flatMap(({ id, positions }) => positions.filter((each) => each.aloft).map(({ name }) => ({ part: id, name })));
    const under = new Map(graph.access.places.flatMap((place) => (place.under === undefined ? [] : [[place.id, place.under] as const])));
    const risky = graph.tasks.filter(({ site, stance }) => {
      const parts = [...site.under.filter(({ meant }) => meant === undefined).map(({ part }) => part), under.get(site.place ?? '')];
      return stances.some((each) => holds(graph, stance, each) && aloft.some(({ part, name }) => parts.includes(part) && each[part] === name));
    });
    expect(risky.map(({ id }) => id)).toEqual([]);
  });
});
