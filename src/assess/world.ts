/**
 * Everything one run looks at: the graph by id, the timeline, now, what is intended, and the count of steps.
 *
 * State is owned here and nowhere else: the step counter, the doings worked out so far and the record being written.
 */
import type { Condition, Node, NodeId, RuleGraph, Trigger } from '../graph/rule-graph.js';
import type { ScheduleNames } from '../history/schedule-names.js';
import type { Timeline } from '../history/timeline.js';
import type { Moment } from '../values/moment.js';
import type { AssessOptions, Observation } from './assessment.js';
import type { EffectiveDoing } from './doings.js';
import type { Kinds } from './kinds.js';

/** Thrown when a run exceeds its budget of steps; the schedule or the history is larger than the embedder allowed for. */
export class BudgetError extends Error {
  override readonly name = 'BudgetError';

  constructor(
    readonly budget: number,
    readonly task: string | null,
  ) {
    super(`assessing took more than ${budget} steps${task === null ? '' : `, the last of them in task \`${task}\``}`);
  }
}

/** Steps after which assessing gives up with a `BudgetError`, where nothing else is asked for. */
export const defaultBudget = 2_000_000;

/** A schedule's things by id, worked out once per graph. */
export interface GraphIndex extends ScheduleNames {
  readonly graph: RuleGraph;
}

export class World {
  steps = 0;
  /** The task being assessed, for the budget's message. */
  task: string | null = null;
  private observations: Observation[] = [];
  readonly doings = new Map<string, readonly EffectiveDoing[]>();
  /** The same without restarts. */
  readonly realDoings = new Map<string, readonly EffectiveDoing[]>();

  constructor(
    readonly index: GraphIndex,
    readonly timeline: Timeline,
    readonly now: Moment,
    readonly options: AssessOptions,
    readonly kinds: Omit<Kinds, 'entries'>,
  ) {}

  /** Counts `count` steps against the budget. @throws BudgetError past it. */
  step(count = 1): void {
    this.steps += count;
    const budget = this.options.budget ?? defaultBudget;
    if (this.steps > budget) throw new BudgetError(budget, this.task);
  }

  /** Writes down what a node came to. */
  observe(observation: Observation): void {
    if (this.options.withoutRecord !== true) this.observations.push(observation);
  }

  /** Takes the observations made since the last call. */
  takeRecord(): readonly Observation[] {
    const taken = this.observations;
    this.observations = [];
    return taken;
  }

  trigger(id: NodeId): Trigger {
    return this.node(id) as Trigger;
  }

  condition(id: NodeId): Condition {
    return this.node(id) as Condition;
  }

  private node(id: NodeId): Node {
    const node = this.index.graph.nodes[id];
    if (node === undefined) throw new Error(`rule graph has no node ${id}`);
    return node;
  }
}
