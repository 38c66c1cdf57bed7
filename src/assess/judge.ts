/**
 * Judging one limit by its numbers (docs/meaning.md §4): clear, coming up, due, overdue, and whether a hard stop applies.
 */
import type { LateHold, Margin, NodeId } from '../graph/rule-graph.js';
import type { EntryId } from '../history/entry.js';
import type { Moment } from '../values/moment.js';
import type { DuePoint, LimitFacts, Note, Observation } from './assessment.js';
import type { Axis } from './axis.js';
import type { AxisValue } from './doings.js';
import type { LateStop, Reach } from './reach.js';
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
  /** Where the share used is not simply how far the axis has come: the sum of a duty mix, with what each duty used; and where the meter was last
   *  read, if work went on since. */
  readonly mix?: { readonly used: number; readonly shares: NonNullable<Observation['shares']>; readonly read?: number };
}

/** Judges a measured limit, writes it into the record and returns what it came to. */
export function judge(world: World, rule: LimitRule, axis: Axis, measured: Measured): Reach {
  const { base, due, now, note, stood, mix } = measured;
  const { id, strict = false, hold, lasts = 0 } = rule;
  const overdueAfter = axis.after(due + lasts, rule.late);
  const comingUpFrom = axis.before(due, rule.lead);
  const isReached = strict ? now.value > due : now.value >= due;
  const isOverdue = now.value > overdueAfter;
  const state = isOverdue ? 'overdue' : isReached ? 'due' : now.value >= comingUpFrom ? 'coming-up' : 'clear';
  const reached = isOverdue || isReached ? axis.reached(due, strict) : null;
  const reachedAt = reached?.when ?? null;
  const duePoint = axis.point(due);
  const [left, span] = [due - now.value, due - base.value];
  const used = mix?.used ?? (span > 0 ? (now.value - base.value) / span : 1);
  const entries = [...new Set([...base.entries, ...now.entries])];
  world.observe({
    node: id,
    state,
    limit: {
      base: baseFacts(axis, base),
      span,
      due: duePoint,
      overdueAfter: axis.point(overdueAfter),
      comingUpFrom: axis.point(comingUpFrom),
      now: { point: axis.point(now.value), entries: now.entries, ...(mix?.read === undefined ? {} : { read: axis.point(mix.read) }) },
      left,
      used,
    },
    reachedAt,
    entries: [...new Set([...entries, ...(reached?.entries ?? [])])],
    ...(note === undefined ? {} : { note }),
    ...(stood === undefined ? {} : { stood }),
    ...(mix === undefined ? {} : { shares: mix.shares }),
  });
  const isStopped = hold !== undefined && now.value > axis.after(due + lasts, hold.after);
  return {
    state,
    governing: id,
    due: duePoint,
    left,
    used,
    reachedAt,
    forecast: axis.rate === null || axis.rate <= 0 ? null : world.now.day + left / axis.rate,
    missing: [],
    stops: isStopped ? [{ node: id, text: hold.text, truth: 'true', entries }] : [],
  };
}

function baseFacts(axis: Axis, { value, why, when, entries, anchor }: Measured['base']): LimitFacts['base'] {
  const from = anchor === undefined ? {} : { anchor: { point: axis.point(anchor.value), spans: anchor.spans } };
  return { point: axis.point(value), why, when, entries, ...from };
}

/** The hard stop that an unknown or unrecorded limit could hide. */
export function hiddenStop(rule: LimitRule): readonly LateStop[] {
  return rule.hold === undefined ? [] : [{ node: rule.id, text: rule.hold.text, truth: 'unknown', entries: [] }];
}
