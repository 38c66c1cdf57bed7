/** Works out, for one machine, what follows from its facts whatever the day: bases, due points, when limits were reached. */
import { assertNever } from '../base/assert-never.js';
import type { CalendarAmount } from '../graph/rule-graph.js';
import { TICKS_PER_UNIT } from '../values/ticks.js';
import type { LimitPlan, TriggerPlan } from './column-plan.js';
import { type MachineColumns, NO_DAY } from './machine-columns.js';
import { MeterPoints } from './meter-points.js';
import type { MonthTable } from './month-table.js';

/** No task. */
const NOBODY = -1;

export class Settler {
  private readonly points: readonly MeterPoints[];
  /** Task → the task whose doing set its clock last. */
  private readonly setter: Int32Array;
  /** Limit → the task that it belongs to. */
  private readonly owner: Int32Array;

  constructor(
    private readonly columns: MachineColumns,
    private readonly months: MonthTable,
  ) {
    const { plan } = columns;
    this.points = plan.meters.map(() => new MeterPoints(plan.tasks.length + 1));
    this.setter = new Int32Array(plan.tasks.length);
    this.owner = new Int32Array(plan.limits.length);
    const own = (trigger: TriggerPlan, task: number): void => {
      for (const limit of limitsOf(trigger)) this.owner[limit.slot] = task;
    };
    for (const task of plan.tasks) if (task.trigger !== null) own(task.trigger, task.index);
  }

  /** `false` if its meter readings disagree, so that only the ordinary assessor can tell which of them count. */
  settle(machine: number): boolean {
    const { plan } = this.columns;
    for (let meter = 0; meter < plan.meters.length; meter += 1) if (!this.readMeter(machine, meter)) return false;
    for (let task = 0; task < plan.tasks.length; task += 1) this.setter[task] = this.lastSetter(machine, task);
    for (let slot = 0; slot < plan.limits.length; slot += 1) {
      const limit = plan.limits[slot];
      if (limit !== undefined) this.settleLimit(machine, limit);
    }
    for (const first of plan.firsts)
      this.columns.met[first.slot * this.columns.stride + machine] = this.isMet(machine, first.first) ? 1 : 0;
    return true;
  }

  private readMeter(machine: number, meter: number): boolean {
    const { plan, stride, shown, readOn, doneOn, doneShown } = this.columns;
    const points = this.points[meter];
    if (points === undefined) return false;
    points.clear();
    const count = plan.meters.length;
    for (let task = 0; task < plan.tasks.length; task += 1) {
      const noted = doneShown[(task * count + meter) * stride + machine] ?? Number.NaN;
      if (noted >= 0) points.add(doneOn[task * stride + machine] ?? NO_DAY, noted);
    }
    const reading = shown[meter * stride + machine] ?? Number.NaN;
    if (reading >= 0) points.add(readOn[machine] ?? NO_DAY, reading);
    return points.agree(plan.meters[meter]?.ticksPerDay ?? null);
  }

  private lastSetter(machine: number, task: number): number {
    const { plan, stride, doneOn } = this.columns;
    const sources = plan.tasks[task]?.sources ?? [];
    let [last, day] = [NOBODY, NO_DAY];
    for (let i = 0; i < sources.length; i += 1) {
      const source = sources[i] ?? NOBODY;
      const on = doneOn[source * stride + machine] ?? NO_DAY;
      // On one day the later id counts as the later doing, as everywhere.
      if (on !== NO_DAY && on >= day) [last, day] = [source, on];
    }
    return last;
  }

  private settleLimit(machine: number, limit: LimitPlan): void {
    const { rule } = limit;
    switch (rule.is) {
      case 'calendar-interval':
        return this.settleDays(machine, limit, rule.amount);
      case 'meter-interval':
        return this.settleInterval(machine, limit, rule.meter, rule.ticks);
      case 'marks':
        return this.settleMarks(machine, limit, rule.meter, rule.ticks, rule.early);
      case 'stages':
        return this.settleStages(machine, limit, rule.meter, rule.points, rule.early);
      default:
        return assertNever(rule);
    }
  }

  private settleDays(machine: number, limit: LimitPlan, amount: CalendarAmount): void {
    const { inService, doneOn, stride } = this.columns;
    const by = this.setter[this.owner[limit.slot] ?? 0] ?? NOBODY;
    const base = by === NOBODY ? (limit.fromStart ? (inService[machine] ?? NO_DAY) : NO_DAY) : (doneOn[by * stride + machine] ?? NO_DAY);
    if (base === NO_DAY) this.write(machine, limit, Infinity, Number.NaN, 0);
    else this.writeDays(machine, limit, base, this.dayAfter(base, amount));
  }

  private writeDays(machine: number, limit: LimitPlan, base: number, due: number): void {
    this.write(machine, limit, due - base, due, limit.strict ? due + 1 : due);
  }

  private dayAfter(base: number, amount: CalendarAmount): number {
    switch (amount.unit) {
      case 'days':
        return base + amount.count;
      case 'months':
        return this.months.addMonths(base, amount.count);
      case 'calendar-months':
        return this.months.addCalendarMonths(base, amount.count);
      case 'minutes':
        throw new Error('minutes have no column');
      default:
        return assertNever(amount.unit);
    }
  }

  private settleInterval(machine: number, limit: LimitPlan, meter: number, ticks: number): void {
    const started = (this.columns.inService[machine] ?? NO_DAY) !== NO_DAY;
    const by = this.setter[this.owner[limit.slot] ?? 0] ?? NOBODY;
    if (by === NOBODY && !(limit.fromStart && started)) return this.write(machine, limit, Infinity, Number.NaN, 0);
    const base = by === NOBODY ? 0 : this.totalAt(machine, by, meter);
    this.reachable(machine, limit, meter, base, base + ticks);
  }

  private settleMarks(machine: number, limit: LimitPlan, meter: number, size: number, early: number): void {
    const by = this.setter[this.owner[limit.slot] ?? 0] ?? NOBODY;
    const started = (this.columns.inService[machine] ?? NO_DAY) !== NO_DAY;
    const now = this.points[meter]?.last() ?? Number.NaN;
    const latest = Math.floor(now / size) * size;
    if (by === NOBODY && !started && latest > 0) return this.write(machine, limit, Infinity, Number.NaN, 0);
    const metUpTo = by === NOBODY ? 0 : this.totalAt(machine, by, meter) + early;
    const next = (Math.floor(metUpTo / size) + 1) * size;
    const due = latest >= next ? latest : next;
    this.reachable(machine, limit, meter, due - size, due);
  }

  private settleStages(machine: number, limit: LimitPlan, meter: number, points: readonly number[], early: number): void {
    const met = this.stagesMet(machine, this.owner[limit.slot] ?? 0, meter, points, early);
    if (met < 0) return this.write(machine, limit, Infinity, Number.NaN, 0);
    if (met >= points.length) return this.write(machine, limit, Infinity, Infinity, 0);
    const now = this.points[meter]?.last() ?? Number.NaN;
    let due = points[met] ?? 0;
    for (let i = met; i < points.length; i += 1) if ((points[i] ?? 0) <= now) due = points[i] ?? 0;
    this.reachable(machine, limit, meter, 0, due);
  }

  /** How many stages are met by the doing that met most; all if it was done and nobody knows the start; −1 if neither is known. */
  private stagesMet(machine: number, task: number, meter: number, points: readonly number[], early: number): number {
    const done = (this.setter[task] ?? NOBODY) !== NOBODY;
    if ((this.columns.inService[machine] ?? NO_DAY) === NO_DAY) return done ? points.length : -1;
    const { plan, stride, doneOn } = this.columns;
    const sources = plan.tasks[task]?.sources ?? [];
    let most = 0;
    for (let s = 0; s < sources.length; s += 1) {
      const source = sources[s] ?? NOBODY;
      if ((doneOn[source * stride + machine] ?? NO_DAY) === NO_DAY) continue;
      const value = this.totalAt(machine, source, meter);
      let met = 0;
      for (let i = 0; i < points.length; i += 1) if ((points[i] ?? 0) <= value + early) met += 1;
      most = Math.max(most, 1, met);
    }
    return most;
  }

  private isMet(machine: number, trigger: TriggerPlan): boolean {
    if (trigger.kind === 'group') return trigger.parts.every((part) => this.isMet(machine, part));
    if (trigger.kind === 'first' || trigger.rule.is !== 'stages') return false;
    const { meter, points, early } = trigger.rule;
    return this.stagesMet(machine, this.owner[trigger.slot] ?? 0, meter, points, early) >= points.length;
  }

  /** Where a meter stood at a doing: as noted with it, else the last reading not later. */
  private totalAt(machine: number, task: number, meter: number): number {
    const { plan, stride, doneOn, doneShown } = this.columns;
    const noted = doneShown[(task * plan.meters.length + meter) * stride + machine] ?? Number.NaN;
    if (noted >= 0) return Math.round(noted * TICKS_PER_UNIT);
    return this.points[meter]?.at(doneOn[task * stride + machine] ?? NO_DAY) ?? Number.NaN;
  }

  private reachable(machine: number, limit: LimitPlan, meter: number, base: number, due: number): void {
    const points = this.points[meter];
    const known = points !== undefined && points.count > 0 && !Number.isNaN(due);
    if (!known) return this.write(machine, limit, Number.NaN, Number.NaN, 0);
    const now = points.last();
    this.write(machine, limit, due - base, due - now, points.reached(due, limit.strict, 0));
  }

  private write(machine: number, limit: LimitPlan, span: number, due: number, reach: number): void {
    const at = limit.slot * this.columns.stride + machine;
    this.columns.span[at] = span;
    this.columns.due[at] = due;
    this.columns.reach[at] = reach;
    if (Number.isNaN(due)) this.columns.unknowns[limit.slot] = (this.columns.unknowns[limit.slot] ?? 0) + 1;
  }
}

function limitsOf(trigger: TriggerPlan): readonly LimitPlan[] {
  switch (trigger.kind) {
    case 'limit':
      return [trigger];
    case 'group':
      return trigger.parts.flatMap(limitsOf);
    case 'first':
      return [...limitsOf(trigger.first), ...(trigger.then === null ? [] : limitsOf(trigger.then))];
    default:
      return assertNever(trigger);
  }
}
