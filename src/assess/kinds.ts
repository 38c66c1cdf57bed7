/**
 * The kinds of rule that an engine can carry, and what each takes: an open registry, filled by whoever puts an engine together.
 *
 * Nothing registers itself: a kind is carried where a set that has it is handed over, so that a bundler leaves out all the others.
 */
import type { CalendarAmount, Condition, IntervalNode, MeterAmount, NodeId, Task, Trigger, WorkAmount } from '../graph/rule-graph.js';
import type { DaysByWeek } from '../graph/marked-days.js';
import type { EntryKind } from '../history/entry.js';
import type { Facts } from '../history/facts.js';
import type { Hold, Notice, Observation, TaskAssessment, Verdict } from './assessment.js';
import type { Around } from './assess-task.js';
import type { DaySpans } from './axes/day-axis.js';
import type { Axis, AxisKind } from './axis.js';
import type { BaseResult, RepeatRule } from './base.js';
import type { EffectiveDoing } from './doings.js';
import type { Doing } from '../history/timeline.js';
import type { HardStops } from './hard-stops.js';
import type { OrderOfParts } from './triggers/whichever.js';
import type { Finding } from './finding.js';
import type { Measured } from './judge.js';
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

/** What is asked of tasks, rules and defects besides: by a member of that name, where there is one. */
export interface Aspects {
  /** Of a task for some serial numbers. */
  readonly serial: Around;
  /** Of a task that belongs to an attachment. */
  readonly attachment: Around;
  /** Of a task that is asked for only if, or unless, something holds. */
  readonly gate: Around;
  /** Of a task that reads instruments. */
  readonly reads: Around;
  /** Of a limit that is not counted from when it was done. */
  readonly beat: (world: World, rule: RepeatRule, axis: Axis, doings: readonly EffectiveDoing[], fromStart: boolean) => BaseResult;
  /** Of spans and margins in calendar months, or with days less or more. */
  readonly 'calendar-months': DaySpans;
  /** Of a task that others cover: what is on record of those. */
  readonly covers: (world: World, task: string) => readonly Doing[];
  /** Of a task whose clock others set: their doings. */
  readonly restarts: (world: World, task: string) => readonly EffectiveDoing[];
  /** Of a limit that holds the machine once it is so late. */
  readonly hold: HardStops;
  /** Of whatever can hold the machine: what that makes of the verdict. */
  readonly held: (world: World, tasks: readonly TaskAssessment[], holds: readonly Hold[]) => Verdict | null;
  /** Of rules that are met once all of their parts are. */
  readonly last: OrderOfParts;
  /** Of declared stops. */
  readonly stops: (world: World) => readonly Hold[];
  /** Of a limit that asks for so many doings: where it counts from, and where its axis stood at each of them. */
  readonly often: (world: World, node: IntervalNode, axis: Axis, context: TriggerContext) => BaseResult;
  /** Of marks on days of the week, in every so many weeks or in a month: which days of it they are. */
  readonly weeks: DaysByWeek;
  readonly placed: DaysByWeek;
  /** What owners state about a task without a record. */
  readonly stated: (world: World, task: string) => readonly EffectiveDoing[];
  /** Of a limit that leaves storage of at least so long out. */
  readonly standstill: (world: World, atLeast: CalendarAmount, measured: Measured) => Measured;
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
  /** Kinds of entry that those facts are read from; `readings`: what entries of any kind note of gauges and dipsticks; `sameId`: entries with
   *  the id of another. */
  readonly entries: readonly (EntryKind | 'readings' | 'sameId')[];
}

/** Kinds that belong together: as much as one thing that a schedule can say takes. */
export type KindSet = Partial<Kinds>;

/** The one of a kind. @throws Error where it is not carried: an engine looks for that before it answers. */
export function carried<All extends object, K extends keyof All>(all: All, kind: K): NonNullable<All[K]> {
  const one = all[kind];
  if (one == null) throw new Error(`this engine carries no ${String(kind)}`);
  return one;
}

/** Whether a task, rule or meter has a member that asks for the aspect of its name: one that is given, and if it is a list has anything in it. */
export function asksFor(asking: object, aspect: string): boolean {
  const member: unknown = Reflect.get(asking, aspect);
  return member !== undefined && !(Array.isArray(member) && member.length === 0);
}
