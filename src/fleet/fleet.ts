import { assess } from '../assess/assess.js';
import type { Assessment } from '../assess/assessment.js';
import { nearName } from '../base/near-name.js';
import type { Entry } from '../history/entry.js';
import { dayOf, formatDate } from '../values/civil.js';
import { type Day, onDay } from '../values/moment.js';
import type { ColumnPlan } from './column-plan.js';
import { CLEAR, FleetStates, verdictOfFlags } from './fleet-states.js';
import { TaskJudge } from './judge-task.js';
import { LineScanner } from './line-scanner.js';
import { MachineColumns, NO_DAY } from './machine-columns.js';
import { modelProblem, serialProblem } from './fit.js';
import { type LineCode, type LineProblem, lineProblem } from './line-problem.js';
import { entriesOfLine, type LastDoing, type MachineLine } from './machine-line.js';
import { MonthTable } from './month-table.js';
import { OrdinaryJudge } from './ordinary-judge.js';
import { type MachineRead, readMachine } from './read-machine.js';
import { Settler } from './settle-machine.js';

/** What became of a line: the machine's number, with what of it the schedule does not know; or why it is no machine. */
export type Added =
  | { readonly ok: true; readonly machine: number; readonly strays: readonly string[] }
  | { readonly ok: false; readonly problem: string; readonly code: LineCode; readonly help: string };

const NO_STRAYS: readonly string[] = [];

/**
 * Many machines of one model, in columns (docs/fleets.md).
 *
 * For every machine the answer is that of `assess` for the history that its line stands for, on a day without a time.
 *
 * @example
 * const fleet = new Fleet(planColumns(graph), lines.length);
 * for (const line of lines) fleet.add(line);
 * const answer = fleet.assess(today);
 * STATES[answer.state[task * answer.stride + machine]];
 */
export class Fleet {
  private readonly columns: MachineColumns;
  private readonly scanner: LineScanner;
  private readonly settler: Settler;
  private readonly judge: TaskJudge;
  private readonly ordinary: OrdinaryJudge;

  /** @param capacity most machines that it will hold; its memory is taken at once. */
  constructor(
    readonly plan: ColumnPlan,
    readonly capacity: number,
  ) {
    this.columns = new MachineColumns(plan, capacity);
    const months = new MonthTable();
    this.scanner = new LineScanner(this.columns, months);
    this.settler = new Settler(this.columns, months);
    this.judge = new TaskJudge(this.columns);
    this.ordinary = new OrdinaryJudge(this.columns, (machine) => this.entriesOf(machine));
  }

  /** How many machines there are. */
  get count(): number {
    return this.columns.count;
  }

  /** What a machine is called. */
  nameOf(machine: number): string {
    return this.columns.names[machine] ?? '';
  }

  /** Takes in a machine from a line of JSON; of a longer text, from what stands between two places. */
  add(text: string, from = 0, to = text.length): Added {
    const machine = this.columns.count;
    if (machine >= this.capacity) return this.full();
    if (this.scanner.scan(text, from, to, machine)) return this.take(machine, NO_STRAYS);
    this.columns.clear(machine);
    return this.addMachine(readMachine(text.slice(from, to)));
  }

  /** What of a machine is not as the schedule would have it, though it can be judged; `null` for nothing. */
  misfitOf(machine: number): LineProblem | null {
    const serial = this.columns.serial[machine] ?? Number.NaN;
    return Number.isNaN(serial) ? null : serialProblem(this.plan.graph, serial);
  }

  /** Takes in a machine that was read already. */
  addMachine(read: MachineRead): Added {
    const machine = this.columns.count;
    if (machine >= this.capacity) return this.full();
    switch (read.kind) {
      case 'problem':
        return { ok: false, problem: read.problem, code: read.code, help: read.help };
      case 'logbook':
        this.columns.names[machine] = read.logbook.machine;
        this.columns.ordinary.set(machine, read.logbook.entries);
        this.columns.count += 1;
        return { ok: true, machine, strays: NO_STRAYS };
      case 'line': {
        const misfit = read.line.model === undefined ? null : modelProblem(this.plan.graph, read.line.model);
        return misfit === null ? this.take(machine, this.fill(machine, read.line)) : refused(misfit);
      }
    }
  }

  /** Forgets all machines, and keeps the memory for others. */
  clear(): void {
    this.columns.clearAll();
  }

  /** Judges every task of every machine. `into`: an answer of this fleet to write over. */
  assess(today: Day, into: FleetStates = this.newStates()): FleetStates {
    into.flags.fill(0);
    for (const task of this.plan.tasks) {
      if (task.outside === null) this.judge.judge(today, task, into);
      else this.leaveClear(task.index, into);
    }
    for (let m = 0; m < this.columns.count; m += 1) into.verdict[m] = verdictOfFlags(into.flags[m] ?? 0);
    this.ordinary.judge(today, into);
    return into;
  }

  /** Room for an answer. */
  newStates(): FleetStates {
    return new FleetStates(this.plan.tasks.length, this.columns.stride);
  }

  /** The history that one machine's line stands for. */
  entriesOf(machine: number): readonly Entry[] {
    return this.columns.ordinary.get(machine) ?? entriesOfLine(this.lineOf(machine));
  }

  /** The whole assessment of one machine, with the record that an explanation is read from. Costs nothing until it is asked for. */
  assessmentOf(machine: number, today: Day): Assessment {
    return assess(this.plan.graph, this.entriesOf(machine), onDay(today));
  }

  private full(): Added {
    return refused(lineProblem('no-room', `there is room for ${this.capacity} machines`));
  }

  /** What the ordinary assessor will fill in. */
  private leaveClear(task: number, into: FleetStates): void {
    const from = task * this.columns.stride;
    into.state.fill(CLEAR, from, from + this.columns.count);
  }

  private take(machine: number, strays: readonly string[]): Added {
    if (!this.settler.settle(machine)) this.columns.ordinary.set(machine, null);
    this.columns.count += 1;
    return strays.length === 0 ? { ok: true, machine, strays: NO_STRAYS } : { ok: true, machine, strays };
  }

  private fill(machine: number, line: MachineLine): readonly string[] {
    const { columns, plan } = this;
    const days = [line.on, line.inService, ...Object.values(line.done ?? {}).map(({ on }) => on)].flatMap((day) =>
      day === undefined ? [] : (dayOf(day) ?? []),
    );
    columns.names[machine] = line.machine;
    columns.models[machine] = line.model;
    columns.latest[machine] = Math.max(NO_DAY, ...days);
    columns.serial[machine] = line.serial ?? Number.NaN;
    columns.inService[machine] = numberOf(line.inService);
    columns.readOn[machine] = numberOf(line.on);
    const strays: string[] = [];
    this.fillMeters(columns.shown, 0, machine, line.meters, strays);
    for (const [id, doing] of Object.entries(line.done ?? {})) {
      const task = plan.tasks.findIndex((each) => each.id === id);
      if (task < 0) {
        strays.push(noSuch('task', id, plan.tasks));
        continue;
      }
      columns.doneOn[task * columns.stride + machine] = numberOf(doing.on);
      this.fillMeters(columns.doneShown, task * plan.meters.length, machine, doing.meters, strays);
    }
    return strays;
  }

  private fillMeters(column: Float64Array, first: number, machine: number, meters: LastDoing['meters'], strays: string[]): void {
    for (const [id, value] of Object.entries(meters ?? {})) {
      const meter = this.plan.meters.findIndex((each) => each.id === id);
      if (meter < 0) strays.push(noSuch('meter', id, this.plan.meters));
      else column[(first + meter) * this.columns.stride + machine] = value;
    }
  }

  private lineOf(machine: number): MachineLine {
    const { columns, plan } = this;
    const { stride } = columns;
    const day = (column: Int32Array, at: number): string | undefined => {
      const found = column[at] ?? NO_DAY;
      return found === NO_DAY ? undefined : formatDate(found as Day);
    };
    const meters = (column: Float64Array, first: number): Readonly<Record<string, number>> =>
      Object.fromEntries(
        plan.meters.flatMap(({ id }, meter) => {
          const value = column[(first + meter) * stride + machine] ?? Number.NaN;
          return value >= 0 ? [[id, value] as const] : [];
        }),
      );
    const done = plan.tasks.flatMap(({ id, index }): (readonly [string, LastDoing])[] => {
      const on = day(columns.doneOn, index * stride + machine);
      return on === undefined ? [] : [[id, { on, meters: meters(columns.doneShown, index * plan.meters.length) }]];
    });
    const [on, inService, serial] = [day(columns.readOn, machine), day(columns.inService, machine), columns.serial[machine] ?? Number.NaN];
    const model = columns.models[machine];
    return {
      machine: this.nameOf(machine),
      ...(on === undefined ? {} : { on }),
      ...(inService === undefined ? {} : { inService }),
      ...(model === undefined ? {} : { model }),
      ...(Number.isNaN(serial) ? {} : { serial }),
      meters: meters(columns.shown, 0),
      done: Object.fromEntries(done),
    };
  }
}

function noSuch(kind: 'task' | 'meter', id: string, known: readonly { readonly id: string }[]): string {
  const near = nearName(
    id,
    known.map((each) => each.id),
  );
  const meant = near === undefined ? '' : `; was \`${near}\` meant?`;
  return `There is no ${kind} \`${id}\` in this schedule${kind === 'meter' ? ' that is read' : ''}${meant}`;
}

function refused({ code, what, help }: LineProblem): Added {
  return { ok: false, problem: what, code, help };
}

function numberOf(day: string | undefined): number {
  return day === undefined ? NO_DAY : (dayOf(day) ?? NO_DAY);
}
