/**
 * A change that would alter a task's state, structured so that it can be tried: `applyChange` makes it happen in a history,
 * `justShort` stops the least bit before it.
 */
import type { TaskState } from '../assess/assessment.js';
import type { Day } from '../values/moment.js';

/** Which side of an edge a reading has to come to. */
export type Beyond = 'above' | 'at-least' | 'below' | 'at-most';

interface Becomes {
  /** The state that the task then has; never the one it has now. */
  readonly becomes: TaskState;
}

/** The task is done now. */
export interface DoIt extends Becomes {
  readonly change: 'do-it';
  readonly task: string;
}

/** A meter comes to a life total in ticks; its dial may show less, by `dialBehind`. */
export interface MeterReaches extends Becomes {
  readonly change: 'meter-reaches';
  readonly meter: string;
  readonly ticks: number;
  /** Ticks that the dial is behind the life total (earlier, replaced meters). */
  readonly dialBehind: number;
}

/** The day comes, and nothing else happens until then. */
export interface DateReaches extends Becomes {
  readonly change: 'date-reaches';
  readonly day: Day;
}

/** An instrument is read now and shows a value beyond an edge. Gauge units; for a dipstick 0 is low and 1 is full. */
export interface Reads extends Becomes {
  readonly change: 'reads';
  readonly instrument: string;
  readonly beyond: Beyond;
  readonly value: number;
}

/** The owner states that it was done by today, at the meter values last read. */
export interface StateIt extends Becomes {
  readonly change: 'state-it';
  readonly task: string;
  /** Meter id → what the dial shows now, where it has been read. */
  readonly doneAt: Readonly<Record<string, number>>;
}

/** A declared event happens now. */
export interface Happens extends Becomes {
  readonly change: 'happens';
  readonly event: string;
}

/** A defect is found now, in this class. */
export interface Opens extends Becomes {
  readonly change: 'opens';
  readonly defect: string;
  readonly class: string;
}

/** Something that could happen, and that `applyChange` can try out. */
export type Change = DoIt | MeterReaches | DateReaches | Reads | StateIt | Happens | Opens;
