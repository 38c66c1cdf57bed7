/**
 * Where a repeating limit counts from (docs/meaning.md §4, "Counting").
 */
import type { Amount, Counting, Margin } from '../graph/rule-graph.js';
import type { EntryId } from '../history/entry.js';
import { type Moment, onDay } from '../values/moment.js';
import type { DuePoint, LimitFacts, Missing, Note, Observation } from './assessment.js';
import type { Axis } from './axis.js';
import type { EffectiveDoing } from './doings.js';
import { carried } from './kinds.js';
import type { World } from './world.js';

/** A base that is known: the anchor, and how many whole spans the schedule has moved on from it. */
export interface Base {
  readonly anchor: number;
  readonly spans: number;
  readonly when: Moment | null;
  readonly why: NonNullable<LimitFacts['base']>['why'];
  readonly entries: readonly EntryId[];
}

/** `note`, `stood`: what is to be told of the doings that it rests on, and where the axis stood at them. */
export type BaseResult = { readonly base: Base; readonly note?: Note; readonly stood?: readonly DuePoint[] } | NoBase;

/** There is none: what is missing for it, and what the record tells besides. */
export interface NoBase extends Pick<Observation, 'limit' | 'stood' | 'note'> {
  readonly missing: Missing;
  readonly unrecorded: boolean;
  readonly entries: readonly EntryId[];
}

export interface RepeatRule {
  readonly amount: Amount;
  readonly count: Counting;
  readonly early: Margin;
  readonly late: Margin;
  /** Where the axis stood when it fell due, as seen from a doing, where that is not simply base + span. */
  readonly dueAt?: (base: Base, doing: EffectiveDoing, value: number) => number;
}

/** From the last of the doings, or the machine's start where there is none. `fromStart`: whether the start counts as a base. */
export function baseOf(world: World, rule: RepeatRule, axis: Axis, doings: readonly EffectiveDoing[], fromStart: boolean): BaseResult {
  // Where the beat of the schedule counts, whether a doing was in time rests on all that went before it.
  if (rule.count !== 'doing') return carried(world.kinds.aspects, 'beat')(world, rule, axis, doings, fromStart);
  world.step(doings.length);
  const last = doings.at(-1);
  if (last === undefined) return startBase(world, axis, fromStart) ?? unrecorded(world);
  // Time at work is counted from the doing, where it stands at 0.
  const stood = axis.at(last, last.when);
  return stood === null ? lacksAxis(world, axis, last) : { base: freshBase(last, stood.value, [...last.entries, ...stood.entries]) };
}

/** What counts from the machine's start; `null` where that is not on record, or does not count. */
export function startBase(world: World, axis: Axis, fromStart: boolean): { readonly base: Base } | null {
  const start = fromStart ? axis.start() : null;
  if (start === null) return null;
  return { base: { anchor: start.value, spans: 0, when: startMoment(world), why: 'start', entries: start.entries } };
}

/** When the machine entered service; `null` where nobody noted it. */
export function startMoment({ timeline }: World): Moment | null {
  const { inService } = timeline.machine;
  return inService === null ? null : onDay(inService);
}

/** A base at a doing. */
export function freshBase({ when, why }: EffectiveDoing, anchor: number, entries: readonly EntryId[]): Base {
  return { anchor, spans: 0, when, why, entries: [...new Set(entries)] };
}

/** Neither a doing nor a start is on record. */
export function unrecorded({ task }: World): NoBase {
  return { missing: { what: 'record', task: task ?? '' }, unrecorded: true, entries: [] };
}

/** Nobody noted where the axis stood at the last doing. */
export function lacksAxis(world: World, { missing }: Axis, { when, entries }: EffectiveDoing): NoBase {
  const lacking = { unrecorded: false, entries, ...stoodOn(when) };
  if (missing.what !== 'meter') return { ...unrecorded(world), ...lacking };
  return { missing: { what: 'meter-at-doing', meter: missing.meter, entry: entries[0] ?? '' }, ...lacking };
}

/** The moment of something on which nobody noted where the axis stood, as a point that it rests on. */
export function stoodOn(when: Moment | null): Pick<NoBase, 'stood'> {
  return when === null ? {} : { stood: pointsOf(when) };
}

/** The point at a moment; none where nobody knows when. */
export function pointsOf(when: Moment | null): readonly DuePoint[] {
  return when === null ? [] : [{ on: 'moment', at: when }];
}
