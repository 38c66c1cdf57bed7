/**
 * Judging one limit by its numbers (docs/meaning.md §4): clear, coming up, due, overdue, and whether a hard stop applies.
 */
import type { LateHold, Margin, NodeId } from '../graph/rule-graph.js';
import type { EntryId } from '../history/entry.js';
import type { Moment } from '../values/moment.js';
import type { DuePoint, LimitFacts, Note, Observation } from './assessment.js';
import type { Axis, AxisValue } from './axis.js';
import type { LateStop, Reach, TriggerState } from './reach.js';
import type { World } from './world.js';

/** The parts of a limit node that judging needs. */
export interface LimitRule {
  readonly id: NodeId;
  readonly late: Margin;
  readonly lead: Margin;
  readonly hold?: LateHold;
  readonly strict?: boolean;
  /** How much longer than its due point the limit may be met without being late: the rest of a window's month, in days. */
  readonly lasts?: number;
}

/** A limit with its numbers filled in, on the units of its axis. */
export interface Measured {
  readonly base: {
    readonly value: number;
    readonly why: NonNullable<LimitFacts['base']>['why'];
    readonly when: Moment | null;
    readonly entries: readonly EntryId[];
    /** Where the base is so many whole spans after something else. */
    readonly anchor?: { readonly value: number; readonly spans: number };
  };
  readonly due: number;
  readonly now: AxisValue;
  readonly note?: Note;
  /** Other points that the due point rests on. */
  readonly stood?: readonly DuePoint[];
  /** Where the share used is not simply how far the axis has come: the sum of a duty mix, with what each duty used. */
  readonly mix?: { readonly used: number; readonly shares: NonNullable<Observation['shares']> };
}

/** Judges a measured limit, writes it into the record and returns what it came to. */
export function judge(world: World, rule: LimitRule, axis: Axis, measured: Measured): Reach {
  const { base, due, now } = measured;
  const strict = rule.strict === true;
  const state = stateAt(axis, now.value, due, rule, strict);
  const isReached = state === 'due' || state === 'overdue';
  const reached = isReached ? axis.reached(due, strict) : null;
  const left = due - now.value;
  const span = due - base.value;
  const used = measured.mix?.used ?? (span > 0 ? (now.value - base.value) / span : 1);
  world.observe({
    node: rule.id,
    state,
    limit: {
      base: baseFacts(axis, base),
      span,
      due: axis.point(due),
      overdueAfter: axis.point(axis.after(due + (rule.lasts ?? 0), rule.late)),
      comingUpFrom: axis.point(axis.before(due, rule.lead)),
      now: { point: axis.point(now.value), entries: now.entries },
      left,
      used,
    },
    reachedAt: reached?.when ?? null,
    entries: [...new Set([...base.entries, ...now.entries, ...(reached?.entries ?? [])])],
    ...(measured.note === undefined ? {} : { note: measured.note }),
    ...(measured.stood === undefined ? {} : { stood: measured.stood }),
    ...(measured.mix === undefined ? {} : { shares: measured.mix.shares }),
  });
  return {
    state,
    governing: rule.id,
    due: axis.point(due),
    left,
    used,
    reachedAt: reached?.when ?? null,
    forecast: axis.rate === null || axis.rate <= 0 ? null : world.now.day + left / axis.rate,
    missing: [],
    stops: stopAt(axis, now.value, due, rule, [...new Set([...base.entries, ...now.entries])]),
  };
}

function baseFacts(axis: Axis, { value, why, when, entries, anchor }: Measured['base']): LimitFacts['base'] {
  const from = anchor === undefined ? {} : { anchor: { point: axis.point(anchor.value), spans: anchor.spans } };
  return { point: axis.point(value), why, when, entries, ...from };
}

function stateAt(axis: Axis, now: number, due: number, rule: LimitRule, strict: boolean): TriggerState {
  if (now > axis.after(due + (rule.lasts ?? 0), rule.late)) return 'overdue';
  if (strict ? now > due : now >= due) return 'due';
  return now >= axis.before(due, rule.lead) ? 'coming-up' : 'clear';
}

function stopAt(axis: Axis, now: number, due: number, rule: LimitRule, entries: readonly EntryId[]): readonly LateStop[] {
  const { hold } = rule;
  return hold !== undefined && now > axis.after(due + (rule.lasts ?? 0), hold.after)
    ? [{ node: rule.id, text: hold.text, truth: 'true', entries }]
    : [];
}

/** The hard stop that an unknown or unrecorded limit could hide. */
export function hiddenStop(rule: LimitRule): readonly LateStop[] {
  return rule.hold === undefined ? [] : [{ node: rule.id, text: rule.hold.text, truth: 'unknown', entries: [] }];
}
