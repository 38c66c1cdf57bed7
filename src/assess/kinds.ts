/**
 * The kinds of rule that an engine can carry, and what each takes: an open registry, filled by whoever puts an engine together.
 *
 * Nothing registers itself: a kind is carried where a set that has it is handed over, so that a bundler leaves out all the others.
 */
import type { CalendarAmount, Condition, IntervalNode, MeterAmount, NodeId, Task, Trigger, WorkAmount } from '../graph/rule-graph.js';
import type { EntryKind } from '../history/entry.js';
import type { Facts } from '../history/facts.js';
import type { Hold, Notice, Observation } from './assessment.js';
import type { Axis, AxisKind } from './axis.js';
import type { Base, RepeatRule } from './base.js';
import type { EffectiveDoing } from './doings.js';
import type { Finding } from './finding.js';
import type { Measured } from './judge.js';
import type { SeveralDoings } from './often-done.js';
import type { Reach } from './reach.js';
import type { TriggerContext } from './trigger-context.js';
import type { World } from './world.js';

/** How a part of a condition is told; given, so that a file need not import the one that imports it. */
export type Test = (world: World, id: NodeId) => Finding;

/** For each kind of trigger what judges it. */
export type Triggers = {
  readonly [K in Trigger['kind']]: (world: World, node: Extract<Trigger, { readonly kind: K }>, context: TriggerContext) => Reach;
};

/** For each kind of condition what tells whether it holds. */
export type Conditions = {
  readonly [K in Condition['kind']]: (world: World, node: Extract<Condition, { readonly kind: K }>, test: Test) => Finding;
};

/** For each kind of axis what makes one for an amount. */
export interface Axes extends Readonly<Record<AxisKind, (world: World, amount: never) => Axis>> {
  readonly meter: (world: World, amount: MeterAmount) => Axis;
  readonly work: (world: World, amount: WorkAmount) => Axis;
  readonly days: (world: World, amount: CalendarAmount) => Axis;
  readonly minutes: (world: World, amount: CalendarAmount) => Axis;
}

/** What readings or defects hold, and caution of. */
export interface Holding {
  readonly holds: readonly Hold[];
  readonly notices: readonly Notice[];
}

/** What is asked of tasks and defects besides their rules. */
export interface Aspects {
  /** Of a task that belongs to an attachment: whether that is on. */
  readonly attached: (world: World, attachment: string) => Finding;
  /** Of a limit that is not counted from when it was done. */
  readonly beat: (rule: RepeatRule, axis: Axis, base: Base, doing: EffectiveDoing, value: number) => Base | null;
  /** Of a task that is asked for only if, or unless, something holds. */
  readonly gate: Test;
  /** Of declared stops. */
  readonly stops: (world: World) => readonly Hold[];
  /** Of a task that reads instruments. */
  readonly reads: (world: World, task: Task) => Holding;
  /** Of a limit that asks for so many doings: where it counts from, and where its axis stood at each of them. */
  readonly often: (world: World, node: IntervalNode, axis: Axis, context: TriggerContext) => SeveralDoings;
  /** What owners state about a task without a record. */
  readonly stated: (world: World, task: string) => readonly EffectiveDoing[];
  /** Of a limit that leaves storage of at least so long out. */
  readonly storedTime: (world: World, atLeast: CalendarAmount, measured: Measured) => Measured;
  /** Of all declared defects. */
  readonly openDefects: (world: World) => Holding;
  /** Of rules on what begins and ends: the record, with what ended earlier spells that something cited began. */
  readonly ends: (world: World, record: readonly Observation[]) => readonly Observation[];
  /** Of a task that is met by others. */
  readonly metBy: {
    readonly doings: (world: World, parts: readonly string[], outright: readonly EffectiveDoing[]) => readonly EffectiveDoing[];
    readonly record: (world: World, task: Task, record: readonly Observation[]) => readonly Observation[];
  };
}

/** All that an engine carries. */
export interface Kinds {
  readonly triggers: Partial<Triggers>;
  readonly conditions: Partial<Conditions>;
  readonly axes: Partial<Axes>;
  readonly aspects: Partial<Aspects>;
  /** How a history is laid out. */
  readonly facts: Partial<Facts>;
  /** Kinds of entry that those facts are read from; `readings`: what entries of any kind note of gauges and dipsticks. */
  readonly entries: readonly (EntryKind | 'readings')[];
}

/** Kinds that belong together: as much as one thing that a schedule can say takes. */
export type KindSet = Partial<Kinds>;

/** The one of a kind. @throws Error where it is not carried: an engine looks for that before it answers. */
export function carried<All extends object, K extends keyof All>(all: All, kind: K): NonNullable<All[K]> {
  const one = all[kind];
  if (one == null) throw new Error(`this engine carries no ${String(kind)}`);
  return one;
}
