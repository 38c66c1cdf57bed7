import { assertNever } from '../base/assert-never.js';
import type { GroupPlan, LimitPlan, TaskPlan, TriggerPlan } from './column-plan.js';
import { CLEAR, COMING_UP, DUE, type FleetStates, HELD, HIDDEN_HOLD, OVERDUE, RESTING, UNKNOWN, UNRECORDED, WORK } from './fleet-states.js';
import type { MachineColumns } from './machine-columns.js';

/** No key is greater: what has nothing to be compared by comes last. */
const MOST = Number.MAX_SAFE_INTEGER;

/**
 * Any plan, one machine after another, by the rules of docs/meaning.md §4: each plan leaves what it came to in its register.
 *
 * NaN in `used`, `day` or `forecast` stands for "none".
 */
export class TreeJudge {
  private readonly state: Uint8Array;
  private readonly left: Float64Array;
  private readonly used: Float64Array;
  /** The day on which it was reached. */
  private readonly day: Float64Array;
  private readonly forecast: Float64Array;
  private readonly governing: Int32Array;
  /** Hard stops, as bits: one in force, one that an unknown could hide. */
  private readonly stops: Uint8Array;

  constructor(private readonly columns: MachineColumns) {
    const size = columns.plan.registers;
    this.state = new Uint8Array(size);
    this.left = new Float64Array(size);
    this.used = new Float64Array(size);
    this.day = new Float64Array(size);
    this.forecast = new Float64Array(size);
    this.governing = new Int32Array(size);
    this.stops = new Uint8Array(size);
  }

  /** One task, all machines. */
  judge(today: number, task: TaskPlan, answer: FleetStates): void {
    for (let m = 0; m < this.columns.count; m += 1) this.judgeOne(m, today, task, answer);
  }

  /** One task, the machines of which a loop found nothing left because something is not known. */
  judgeUnknowns(today: number, task: TaskPlan, answer: FleetStates): void {
    const { count, stride } = this.columns;
    const from = task.index * stride;
    for (let m = 0; m < count; m += 1) if (Number.isNaN(answer.left[from + m])) this.judgeOne(m, today, task, answer);
  }

  private judgeOne(m: number, today: number, task: TaskPlan, answer: FleetStates): void {
    const { trigger, index } = task;
    const at = index * this.columns.stride + m;
    if (trigger === null || this.rests(m, task)) {
      answer.state[at] = trigger === null && !this.rests(m, task) ? CLEAR : RESTING;
      answer.left[at] = Number.NaN;
      answer.governing[at] = -1;
      return;
    }
    this.visit(m, today, trigger);
    const state = this.state[trigger.register] ?? 0;
    answer.state[at] = state;
    answer.left[at] = this.left[trigger.register] ?? 0;
    answer.governing[at] = this.governing[trigger.register] ?? 0;
    // What is due will be looked at, whatever else is not known of it.
    const settled = state === DUE || state === OVERDUE ? HIDDEN_HOLD : 0;
    const stops = (this.stops[trigger.register] ?? 0) & ~settled;
    answer.flags[m] = (answer.flags[m] ?? 0) | stops | (state >= UNRECORDED ? WORK : 0);
  }

  private rests(m: number, { serial }: TaskPlan): boolean {
    const own = this.columns.serial[m] ?? Number.NaN;
    return serial !== null && !Number.isNaN(own) && (own < serial.from || own > serial.to);
  }

  private visit(m: number, today: number, plan: TriggerPlan): void {
    switch (plan.kind) {
      case 'limit':
        return this.limit(m, today, plan);
      case 'group':
        for (let i = 0; i < plan.parts.length; i += 1) {
          const part = plan.parts[i];
          if (part !== undefined) this.visit(m, today, part);
        }
        return this.group(plan);
      case 'first': {
        const met = this.columns.met[plan.slot * this.columns.stride + m] === 1;
        if (met && plan.then === null) return this.nothingLeft(m, today, plan.register, plan.first);
        const chosen = met && plan.then !== null ? plan.then : plan.first;
        this.visit(m, today, chosen);
        return this.copy(chosen.register, plan.register);
      }
      default:
        return assertNever(plan);
    }
  }

  /** All stages are met and nothing follows: clear, for as long as there is no more to the schedule. */
  private nothingLeft(m: number, today: number, register: number, first: TriggerPlan): void {
    this.visit(m, today, first);
    this.stops[register] = 0;
    this.write(register, CLEAR, Number.NaN, Number.NaN, Number.NaN, Number.NaN, this.governing[first.register] ?? 0);
  }

  private limit(m: number, today: number, plan: LimitPlan): void {
    const { columns } = this;
    const { rule, register, node } = plan;
    const at = plan.slot * columns.stride + m;
    const [due, span] = [columns.due[at] ?? 0, columns.span[at] ?? 0];
    const calendar = rule.is === 'calendar-interval';
    // A due point on a meter counts from where the meter stands.
    const now = calendar ? today : 0;
    const left = due - now;
    this.stops[register] = stopsOf(left, due, plan.holdAfter);
    if (due === Infinity) return this.write(register, CLEAR, Number.NaN, Number.NaN, Number.NaN, Number.NaN, node);
    if (Number.isNaN(left)) {
      const state = span === Infinity ? UNRECORDED : UNKNOWN;
      return this.write(register, state, Number.NaN, Number.NaN, Number.NaN, Number.NaN, node);
    }
    const state = stateOf(left, plan);
    const used = span > 0 ? (span - left) / span : 1;
    const day = state < DUE ? Number.NaN : (columns.reach[at] ?? Number.NaN);
    this.write(register, state, left, used, day, calendar ? due : Number.NaN, node);
  }

  private group(plan: GroupPlan): void {
    const { parts } = plan;
    const last = plan.mode === 'last';
    let state = last ? OVERDUE : CLEAR;
    for (let i = 0; i < parts.length; i += 1) {
      const is = this.state[parts[i]?.register ?? 0] ?? 0;
      if (last ? is < state : is > state) state = is;
    }
    const byForecast = state < DUE && this.allForecast(parts, state);
    let [best, bestKey] = [-1, 0];
    for (let i = 0; i < parts.length; i += 1) {
      const part = parts[i]?.register ?? 0;
      if (this.state[part] !== state) continue;
      const key = (last ? -1 : 1) * this.key(part, state, byForecast);
      if (best < 0 || key < bestKey) [best, bestKey] = [part, key];
    }
    this.copy(best, plan.register);
    this.stops[plan.register] = last ? this.stopsOfAll(parts) : this.stopsOfAny(parts);
  }

  private stopsOfAny(parts: readonly TriggerPlan[]): number {
    let stops = 0;
    for (let i = 0; i < parts.length; i += 1) stops |= this.stops[parts[i]?.register ?? 0] ?? 0;
    return stops;
  }

  /** A hard stop applies once every part is beyond its own, and could apply while none is known to be short of it. */
  private stopsOfAll(parts: readonly TriggerPlan[]): number {
    let certain = true;
    for (let i = 0; i < parts.length; i += 1) {
      const stops = this.stops[parts[i]?.register ?? 0] ?? 0;
      if (stops === 0) return 0;
      if ((stops & HELD) === 0) certain = false;
    }
    return certain ? this.stopsOfAny(parts) : HIDDEN_HOLD;
  }

  private allForecast(parts: readonly TriggerPlan[], state: number): boolean {
    for (let i = 0; i < parts.length; i += 1) {
      const part = parts[i]?.register ?? 0;
      if (this.state[part] === state && !Number.isNaN(this.used[part]) && Number.isNaN(this.forecast[part])) return false;
    }
    return true;
  }

  /** Smaller the earlier it decides. */
  private key(part: number, state: number, byForecast: boolean): number {
    if (state >= DUE) return orMost((this.day[part] ?? 0) * 1440);
    if (byForecast) return orMost(this.forecast[part] ?? 0);
    const used = this.used[part] ?? 0;
    return Number.isNaN(used) ? MOST : -used;
  }

  private copy(from: number, to: number): void {
    const value = (column: Float64Array): number => column[from] ?? 0;
    this.stops[to] = this.stops[from] ?? 0;
    this.write(
      to,
      this.state[from] ?? 0,
      value(this.left),
      value(this.used),
      value(this.day),
      value(this.forecast),
      this.governing[from] ?? 0,
    );
  }

  private write(register: number, state: number, left: number, used: number, day: number, forecast: number, governing: number): void {
    this.state[register] = state;
    this.left[register] = left;
    this.used[register] = used;
    this.day[register] = day;
    this.forecast[register] = forecast;
    this.governing[register] = governing;
  }
}

function stateOf(left: number, plan: LimitPlan): number {
  if (left < -plan.late) return OVERDUE;
  if (plan.strict ? left < 0 : left <= 0) return DUE;
  return left <= plan.lead ? COMING_UP : CLEAR;
}

function stopsOf(left: number, due: number, holdAfter: number | null): number {
  if (holdAfter === null || due === Infinity) return 0;
  if (Number.isNaN(left)) return HIDDEN_HOLD;
  return left < -holdAfter ? HELD : 0;
}

function orMost(key: number): number {
  return Number.isNaN(key) ? MOST : key;
}
