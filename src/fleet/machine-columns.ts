import type { Entry } from '../history/entry.js';
import type { ColumnPlan } from './column-plan.js';

/** No such day. */
export const NO_DAY = -0x8000_0000;

/**
 * What is known of up to `capacity` machines, one column a fact; the value of machine `m` in column `c` stands at `c * stride + m`.
 *
 * The facts are kept as they came (days, meters in their units), so that a machine's history can be written out again for whoever
 * asks why. What follows from them and does not depend on the day is worked out once, when a machine is taken in.
 *
 * INVARIANT: a `span` of NaN says that the base is unknown, and one of Infinity that none is on record; `due` is NaN for both. A `due` of
 * Infinity belongs to a limit with nothing left to ask for.
 */
export class MachineColumns {
  count = 0;
  /** Not a power of two, or all columns of one machine would fall on the same lines of the cache. */
  readonly stride: number;
  readonly names: string[] = [];
  /** What model a line says that it is; often none does. */
  readonly models: (string | undefined)[] = [];
  readonly serial: Float64Array;
  readonly inService: Int32Array;
  readonly readOn: Int32Array;
  /** The latest day that its line names. */
  readonly latest: Int32Array;
  /** Column: meter. In its unit; NaN where it was not read. */
  readonly shown: Float64Array;
  /** Column: task. */
  readonly doneOn: Int32Array;
  /** Column: task × meters + meter. */
  readonly doneShown: Float64Array;
  /** Column: slot of a limit. Days; or ticks from where the meter stands, so that what is left on a meter needs no looking up. */
  readonly due: Float64Array;
  /** Column: slot of a limit. From its base to its due point. */
  readonly span: Float64Array;
  /** Column: slot of a limit. The day on which it was seen to be reached, or will be by the calendar. */
  readonly reach: Int32Array;
  /** By slot of a limit: of how many machines the due point is not known. */
  readonly unknowns: Int32Array;
  /** Column: slot of a `first`. */
  readonly met: Uint8Array;
  /** Machines that the ordinary assessor answers for, with their history where it is not in the columns. */
  readonly ordinary = new Map<number, readonly Entry[] | null>();

  constructor(
    readonly plan: ColumnPlan,
    readonly capacity: number,
  ) {
    const stride = (Math.ceil(capacity / 8) | 1) * 8;
    const { meters, tasks, limits, firsts } = plan;
    this.stride = stride;
    this.serial = new Float64Array(stride);
    this.inService = new Int32Array(stride);
    this.readOn = new Int32Array(stride);
    this.latest = new Int32Array(stride);
    this.shown = new Float64Array(meters.length * stride);
    this.doneOn = new Int32Array(tasks.length * stride);
    this.doneShown = new Float64Array(tasks.length * meters.length * stride);
    this.due = new Float64Array(limits.length * stride);
    this.span = new Float64Array(limits.length * stride);
    this.reach = new Int32Array(limits.length * stride);
    this.unknowns = new Int32Array(limits.length);
    this.met = new Uint8Array(firsts.length * stride);
    this.clearAll();
  }

  /** Forgets all machines. */
  clearAll(): void {
    this.count = 0;
    this.names.length = 0;
    this.models.length = 0;
    this.ordinary.clear();
    this.unknowns.fill(0);
    for (const days of [this.inService, this.readOn, this.latest, this.doneOn]) days.fill(NO_DAY);
    for (const numbers of [this.serial, this.shown, this.doneShown]) numbers.fill(Number.NaN);
  }

  /** Forgets what was written of a machine that turned out not to be one. */
  clear(machine: number): void {
    this.models[machine] = undefined;
    this.serial[machine] = Number.NaN;
    this.inService[machine] = NO_DAY;
    this.readOn[machine] = NO_DAY;
    this.latest[machine] = NO_DAY;
    for (let at = machine; at < this.shown.length; at += this.stride) this.shown[at] = Number.NaN;
    for (let at = machine; at < this.doneOn.length; at += this.stride) this.doneOn[at] = NO_DAY;
    for (let at = machine; at < this.doneShown.length; at += this.stride) this.doneShown[at] = Number.NaN;
  }
}
