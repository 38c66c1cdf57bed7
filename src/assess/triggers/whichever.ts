import { firstMinute } from '../../values/moment.js';
import type { AnyNode, NodeId, WhicheverNode } from '../../graph/rule-graph.js';
import { carried } from '../kinds.js';
import type { LateStop, Reach, TriggerState } from '../reach.js';
import type { TriggerContext } from '../trigger-context.js';
import type { World } from '../world.js';

/** A part of a whole that is one of several rules, and what it came to. */
export interface Part {
  readonly id: NodeId;
  readonly reach: Reach;
}

/** Which part decides of several. */
export interface OrderOfParts {
  /** The states in the order in which a part that is in them speaks for the whole. */
  readonly speaks: readonly TriggerState[];
  /** 1: of parts in the same state the earliest governs; -1: the latest. */
  readonly sign: 1 | -1;
  /** The hard stops of the whole. */
  readonly stops: (parts: readonly Part[]) => readonly LateStop[];
}

/** Whichever comes first: the gravest part speaks for the whole, and each hard stop is one of the whole. */
const firstOf: OrderOfParts = {
  speaks: ['overdue', 'due', 'unrecorded', 'unknown', 'coming-up', 'clear'],
  sign: 1,
  stops: (parts) => parts.flatMap(({ reach }) => reach.stops),
};

/** Whichever comes first, or last; and the several timing clauses of one task, of which any will do. */
export function whichever(world: World, node: WhicheverNode | AnyNode, context: TriggerContext): Reach {
  const { speaks, sign, stops } = node.kind === 'any' || node.mode === 'first' ? firstOf : carried(world.kinds.aspects, 'last');
  const parts = node.parts.map((id: NodeId) => ({ id, reach: context.evaluate(world, id, context) }));
  const state = speaks.find((each) => parts.some(({ reach }: Part) => reach.state === each)) ?? 'clear';
  const chosen = governing(
    parts.filter(({ reach }: Part) => reach.state === state),
    state,
    sign,
  );
  if (chosen === undefined) throw new Error(`node ${node.id} has no parts`);
  world.observe({ node: node.id, state, governing: chosen.id, entries: [] });
  return { ...chosen.reach, missing: parts.flatMap(({ reach }: Part) => reach.missing), stops: stops(parts) };
}

/** Of parts in the same state: reached earliest, else forecast earliest, else with the greatest share used; the opposite for `last`. */
function governing(parts: readonly Part[], state: TriggerState, sign: OrderOfParts['sign']): Part | undefined {
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
