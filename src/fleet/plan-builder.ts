import type {
  FirstNode,
  IntervalNode,
  Margin,
  MarksNode,
  NodeId,
  RuleGraph,
  StagesNode,
  Trigger,
  WhicheverNode,
  AnyNode,
} from '../graph/rule-graph.js';
import { daysBeyond } from '../graph/calendar-amount.js';
import type { FirstPlan, LimitPlan, LimitRule, TriggerPlan } from './column-plan.js';

/** Why a trigger cannot be worked out in columns: the clause as its author wrote it. */
export interface Outside {
  readonly outside: string;
}

type Limit = IntervalNode | MarksNode | StagesNode;

/** Turns trigger nodes into plans and numbers their columns. What is left of a plan that was given up on keeps no slot. */
export class PlanBuilder {
  readonly limits: LimitPlan[] = [];
  readonly firsts: FirstPlan[] = [];
  registers = 0;

  constructor(
    private readonly graph: RuleGraph,
    private readonly meters: readonly string[],
  ) {}

  /** The plan of one task's trigger. */
  plan(id: NodeId): TriggerPlan | Outside {
    const [limits, firsts] = [this.limits.length, this.firsts.length];
    const planned = this.visit(id, true);
    if ('outside' in planned) {
      this.limits.length = limits;
      this.firsts.length = firsts;
    }
    return planned;
  }

  private visit(id: NodeId, fromStart: boolean): TriggerPlan | Outside {
    const node = this.graph.nodes[id] as Trigger | undefined;
    switch (node?.kind) {
      case 'interval':
        return node.count === 'doing' && node.standstill === undefined && node.doings === undefined
          ? this.limit(node, this.intervalRule(node), fromStart)
          : outside(node);
      case 'marks':
        return this.limit(node, this.marksRule(node), fromStart);
      case 'stages':
        return this.limit(node, this.stagesRule(node), fromStart);
      case 'whichever':
      case 'any':
        return this.group(node, fromStart);
      case 'first':
        return this.first(node, fromStart);
      default:
        return { outside: node?.origin.text ?? 'an unknown rule' };
    }
  }

  private group(node: WhicheverNode | AnyNode, fromStart: boolean): TriggerPlan | Outside {
    const parts: TriggerPlan[] = [];
    for (const part of node.parts) {
      const planned = this.visit(part, fromStart);
      if ('outside' in planned) return planned;
      parts.push(planned);
    }
    return { kind: 'group', register: this.register(), node: node.id, mode: node.kind === 'any' ? 'first' : node.mode, parts };
  }

  private first(node: FirstNode, fromStart: boolean): TriggerPlan | Outside {
    const first = this.visit(node.first, fromStart);
    if ('outside' in first) return first;
    const then = node.then === undefined ? null : this.visit(node.then, false);
    if (then !== null && 'outside' in then) return then;
    const plan: FirstPlan = { kind: 'first', register: this.register(), slot: this.firsts.length, node: node.id, first, then };
    this.firsts.push(plan);
    return plan;
  }

  private limit(node: Limit, rule: LimitRule | null, fromStart: boolean): LimitPlan | Outside {
    if (rule === null || marginsOf(node).some(({ calendar }) => calendar !== undefined)) return outside(node);
    const strict = node.kind === 'interval' && node.strict;
    const [late, lead, holdAfter] = [node.late.size, node.lead.size, node.hold?.after.size ?? null];
    const plan: LimitPlan = {
      kind: 'limit',
      register: this.register(),
      slot: this.limits.length,
      node: node.id,
      rule,
      fromStart,
      strict,
      late,
      lead,
      holdAfter,
    };
    this.limits.push(plan);
    return plan;
  }

  private register(): number {
    this.registers += 1;
    return this.registers - 1;
  }

  private intervalRule({ amount }: IntervalNode): LimitRule | null {
    if (amount.on === 'calendar')
      return amount.unit === 'minutes' || amount.period !== undefined || daysBeyond(amount) !== 0
        ? null
        : { is: 'calendar-interval', amount };
    const meter = amount.on === 'meter' ? this.meters.indexOf(amount.meter) : -1;
    return meter < 0 ? null : { is: 'meter-interval', meter, ticks: amount.ticks };
  }

  private marksRule({ amount, early }: MarksNode): LimitRule | null {
    const meter = this.meters.indexOf(amount.meter);
    return meter < 0 ? null : { is: 'marks', meter, ticks: amount.ticks, early: early.size };
  }

  private stagesRule({ amounts, from, early }: StagesNode): LimitRule | null {
    const [first] = amounts;
    if (from.is !== 'start' || first?.on !== 'meter') return null;
    const meter = this.meters.indexOf(first.meter);
    const points = amounts.map((amount) => (amount.on === 'meter' ? amount.ticks : 0));
    return meter < 0 ? null : { is: 'stages', meter, points, early: early.size };
  }
}

/** Margins that go by the calendar have no column. */
function marginsOf({ early, late, lead, hold }: Limit): readonly Margin[] {
  return [early, late, lead, ...(hold === undefined ? [] : [hold.after])];
}

function outside(node: Limit): Outside {
  return { outside: node.origin.text };
}
