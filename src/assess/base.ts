/**
 * Where a repeating limit counts from (docs/meaning.md §4, "Counting").
 */
import type { Amount, Counting, Margin } from '../graph/rule-graph.js';
import type { EntryId } from '../history/entry.js';
import type { Moment } from '../values/moment.js';
import type { LimitFacts, Missing, Note } from './assessment.js';
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

export type BaseResult = { readonly base: Base } | NoBase;

/** `since`: when the doing was, of which nobody noted where the axis stood; `later`: when those were that make it the one to count from. */
export interface NoBase {
  readonly missing: Missing;
  readonly unrecorded: boolean;
  readonly entries: readonly EntryId[];
  readonly since?: Moment | null;
  readonly later?: readonly Moment[];
  readonly note?: Note;
}

export interface RepeatRule {
  readonly amount: Amount;
  readonly count: Counting;
  readonly early: Margin;
  readonly late: Margin;
  /** Where the axis stood when it fell due, as seen from a doing, where that is not simply base + span. */
  readonly dueAt?: (base: Base, doing: EffectiveDoing, value: number) => number;
}

/** Follows the doings from the machine's start, or from the first of them. `fromStart`: whether the start counts as a base. */
export function baseOf(world: World, rule: RepeatRule, axis: Axis, doings: readonly EffectiveDoing[], fromStart: boolean): BaseResult {
  const start = fromStart ? axis.start() : null;
  let base: Base | null =
    start === null ? null : { anchor: start.value, spans: 0, when: startMoment(world), why: 'start', entries: start.entries };
  const cited: EntryId[] = [...(start?.entries ?? [])];
  let lacking: EffectiveDoing | null = null;
  for (const doing of doings) {
    world.step();
    const value = axis.at(doing, base?.when ?? null);
    lacking = value === null ? doing : null;
    if (value === null) continue;
    // Where the beat of the schedule counts, whether a doing was in time rests on all that went before it.
    if (rule.count === 'doing') cited.length = 0;
    // Time at work starts afresh with a doing: what went before matters to the beat only.
    cited.push(...doing.entries, ...(rule.count === 'doing' && rule.amount.on === 'work' ? [] : value.entries));
    const before: Base | null = rule.count === 'doing' ? null : base;
    const moved = before === null ? null : carried(world.kinds.aspects, 'beat')(rule, axis, before, doing, value.value);
    base = moved ?? fresh(rule, doing, value.value);
  }
  if (lacking !== null) return { missing: lackOf(world, axis, lacking), unrecorded: false, entries: lacking.entries, since: lacking.when };
  return base === null
    ? { missing: { what: 'record', task: world.task ?? '' }, unrecorded: true, entries: [] }
    : { base: { ...base, entries: [...new Set(cited)] } };
}

/** Time at work is counted from the doing, where it stands at 0. */
function fresh(rule: RepeatRule, doing: EffectiveDoing, value: number): Base {
  return { anchor: rule.amount.on === 'work' ? 0 : value, spans: 0, when: doing.when, why: doing.why, entries: [] };
}

function startMoment(world: World): Moment | null {
  const { inService } = world.timeline.machine;
  return inService === null ? null : { day: inService, minute: null };
}

function lackOf(world: World, axis: Axis, doing: EffectiveDoing): Missing {
  const entry = doing.entries[0] ?? '';
  return axis.missing.what === 'meter'
    ? { what: 'meter-at-doing', meter: axis.missing.meter, entry }
    : { what: 'record', task: world.task ?? '' };
}
