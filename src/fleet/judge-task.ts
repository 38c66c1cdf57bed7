import type { Day } from '../values/moment.js';
import type { LimitPlan, TaskPlan, TriggerPlan } from './column-plan.js';
import type { FleetStates } from './fleet-states.js';
import { judgeLimit } from './judge-limit.js';
import { judgePair } from './judge-pair.js';
import { TreeJudge } from './judge-tree.js';
import { LimitEdges } from './limit-edges.js';
import type { MachineColumns } from './machine-columns.js';

/**
 * Judges one task of all machines: the commonest kinds in a tight loop, and whatever is not known to it, or is of another kind, as a tree.
 */
export class TaskJudge {
  private readonly edges: LimitEdges;
  private readonly tree: TreeJudge;

  constructor(private readonly columns: MachineColumns) {
    this.edges = new LimitEdges(columns.plan.limits);
    this.tree = new TreeJudge(columns);
  }

  judge(today: Day, task: TaskPlan, into: FleetStates): void {
    const { columns, edges } = this;
    const [one, two] = limitsInLoop(task);
    if (one === undefined) return this.tree.judge(today, task, into);
    if (two === undefined) judgeLimit(columns, edges, nowOf(one, today), task.index, one, into);
    else judgePair(columns, edges, nowOf(one, today), nowOf(two, today), task.index, one, two, into);
    if (this.isUnknownOfSome(one) || (two !== undefined && this.isUnknownOfSome(two))) this.tree.judgeUnknowns(today, task, into);
  }

  private isUnknownOfSome({ slot }: LimitPlan): boolean {
    return (this.columns.unknowns[slot] ?? 0) > 0;
  }
}

/** The one or two limits of a task that a loop can judge; none of a task of another kind. */
function limitsInLoop({ trigger, serial }: TaskPlan): readonly LimitPlan[] {
  if (serial !== null || trigger === null) return [];
  if (trigger.kind === 'limit') return trigger.rule.is === 'stages' ? [] : [trigger];
  if (trigger.kind !== 'group' || trigger.mode !== 'first') return [];
  const [one, two, ...more] = trigger.parts;
  if (!isPlainInterval(one) || !isPlainInterval(two) || more.length > 0) return [];
  return isOfDays(one) && isOfDays(two) ? [] : [one, two];
}

function isPlainInterval(plan: TriggerPlan | undefined): plan is LimitPlan {
  return plan?.kind === 'limit' && plan.holdAfter === null && (plan.rule.is === 'meter-interval' || isOfDays(plan));
}

function isOfDays({ rule }: LimitPlan): boolean {
  return rule.is === 'calendar-interval';
}

/** What a due point is compared with. */
function nowOf(limit: LimitPlan, today: Day): number {
  return isOfDays(limit) ? today : 0;
}
