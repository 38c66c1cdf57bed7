import { firstMinute } from '../../values/moment.js';
import type { AnyNode, NodeId, WhicheverNode } from '../../graph/rule-graph.js';
import type { LateStop, Reach, TriggerState } from '../reach.js';
import type { TriggerContext } from '../trigger-context.js';
import type { World } from '../world.js';

/** The order in which a part speaks for the whole of "any of them"; for "all of them" it is the other way round. */
const gravestFirst: readonly TriggerState[] = ['overdue', 'due', 'unrecorded', 'unknown', 'coming-up', 'clear'];

interface Part {
  readonly id: NodeId;
  readonly reach: Reach;
}

/** Whichever comes first, or last; and the several timing clauses of one task, of which any will do. */
export function whichever(world: World, node: WhicheverNode | AnyNode, context: TriggerContext): Reach {
  const mode = node.kind === 'any' ? 'first' : node.mode;
  const parts = node.parts.map((id: NodeId) => ({ id, reach: context.evaluate(world, id, context) }));
  const isThere = (state: TriggerState): boolean => parts.some(({ reach }: Part) => reach.state === state);
  const state = (mode === 'first' ? gravestFirst.find(isThere) : gravestFirst.findLast(isThere)) ?? 'clear';
  const speaking = parts.filter(({ reach }: Part) => reach.state === state);
  const chosen = decide(speaking, state, mode);
  if (chosen === undefined) throw new Error(`node ${node.id} has no parts`);
  world.observe({ node: node.id, state, governing: chosen.id, entries: [] });
  return {
    ...chosen.reach,
    state,
    missing: parts.flatMap(({ reach }: Part) => reach.missing),
    stops: mode === 'first' ? parts.flatMap(({ reach }: Part) => reach.stops) : stopsOfAll(parts),
  };
}

/** Of `last`: a hard stop applies once every part is beyond its own, and could apply while none is known to be short of it. */
function stopsOfAll(parts: readonly Part[]): readonly LateStop[] {
  if (parts.some(({ reach }) => reach.stops.length === 0)) return [];
  const all = parts.flatMap(({ reach }) => reach.stops);
  const certain = parts.every(({ reach }) => reach.stops.some(({ truth }) => truth === 'true'));
  return certain ? all : all.map((stop) => ({ ...stop, truth: 'unknown' as const }));
}

/** The governing one of parts in the same state: reached earliest, else forecast earliest, else with the greatest share used; the opposite for `last`. */
function decide(parts: readonly Part[], state: TriggerState, mode: 'first' | 'last'): Part | undefined {
  const sign = mode === 'first' ? 1 : -1;
  const key = keyFor(parts, state);
  return parts.reduce<Part | undefined>(
    (best, part) => (best === undefined || sign * (key(part) - key(best)) < 0 ? part : best),
    undefined,
  );
}

/** A number that is smaller the earlier a part decides; one measure for all, so that they can be compared. */
function keyFor(parts: readonly Part[], state: TriggerState): (part: Part) => number {
  if (state === 'due' || state === 'overdue') {
    return ({ reach }) => (reach.reachedAt === null ? Infinity : firstMinute(reach.reachedAt));
  }
  const measured = parts.filter(({ reach }) => reach.used !== null);
  if (measured.every(({ reach }) => reach.forecast !== null)) return ({ reach }) => reach.forecast ?? Infinity;
  return ({ reach }) => -(reach.used ?? -Infinity);
}
