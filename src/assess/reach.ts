import type { NodeId } from '../graph/rule-graph.js';
import type { EntryId } from '../history/entry.js';
import type { Moment } from '../values/moment.js';
import type { DuePoint, Missing, TaskState } from './assessment.js';

/** A state that a trigger can be in; only a task as a whole can rest. */
export type TriggerState = Exclude<TaskState, 'resting'>;

/** What a trigger came to: the little that the triggers above it need. The numbers go into the record. */
export interface Reach {
  readonly state: TriggerState;
  /** The limit, occasion or condition that decided (itself, for a leaf). */
  readonly governing: NodeId;
  readonly due: DuePoint | null;
  readonly left: number | null;
  readonly used: number | null;
  /** When it was reached, as far as the record shows; `null` if it was not, or nobody can tell. */
  readonly reachedAt: Moment | null;
  /** The day on which it is forecast to be reached (fractional); `null` without a rate. */
  readonly forecast: number | null;
  readonly missing: readonly Missing[];
  /** Hard stops in force below this trigger, and those that an unknown could hide. */
  readonly stops: readonly LateStop[];
}

export interface LateStop {
  readonly node: NodeId;
  readonly text: string;
  readonly truth: 'true' | 'unknown';
  readonly entries: readonly EntryId[];
}

/** Every member stands here, so that what is made from it has one shape. */
const nothing: Reach = {
  state: 'clear',
  governing: -1,
  due: null,
  left: null,
  used: null,
  reachedAt: null,
  forecast: null,
  missing: [],
  stops: [],
};

/** Nothing is asked of this node now, and nothing lies ahead that it could name. */
export function quiet(node: NodeId): Reach {
  return { ...nothing, governing: node };
}

/** Due since a moment, by an occasion, an event or a condition. */
export function dueSince(node: NodeId, when: Moment | null): Reach {
  return { ...nothing, state: 'due', governing: node, due: when === null ? null : { on: 'moment', at: when }, reachedAt: when };
}

/** It cannot be told without what is missing. */
export function cannotTell(
  node: NodeId,
  missing: readonly Missing[],
  state: 'unknown' | 'unrecorded' = 'unknown',
  stops: readonly LateStop[] = [],
): Reach {
  return { ...nothing, state, governing: node, missing, stops };
}
