/**
 * Judging one limit by its numbers (docs/meaning.md §4): clear, coming up, due, overdue, and whether a hard stop applies.
 */
import type { LateHold, Margin, NodeId } from '../graph/rule-graph.js';
import type { EntryId } from '../history/entry.js';
import type { Moment } from '../values/moment.js';
import type { DuePoint, LimitFacts, Note, Observation } from './assessment.js';
import type { Axis } from './axis.js';
import type { AxisValue } from './doings.js';
import { carried } from './kinds.js';
import type { Reach } from './reach.js';
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
    /** Where the base is so many whole spans after something else: where that stood. */
    readonly anchor?: number;
    readonly spans?: number;
  };
  readonly due: number;
  readonly now: AxisValue;
  /** The share used, where it is not simply how far the axis has come: the sum of a duty mix. */
  readonly used?: number;
  /** Where the meter was last read, if work went on since. */
  readonly read?: number;
  // What the record tells besides, as it stands there.
  readonly note?: Note;
  readonly stood?: readonly DuePoint[];
  readonly shares?: NonNullable<Observation['shares']>;
}

/** Judges a measured limit, writes it into the record and returns what it came to. */
export function judge(world: World, rule: LimitRule, axis: Axis, measured: Measured): Reach {
  const { base, due, now, used: share, read, ...told } = measured;
  const { id, strict = false, hold, lasts = 0 } = rule;
  const endOf = (margin: Margin): number => axis.after(due + lasts, margin);
  const overdueAfter = endOf(rule.late);
  const comingUpFrom = axis.before(due, rule.lead);
  const isOverdue = now.value > overdueAfter;
  const isReached = isOverdue || now.value > due || (!strict && now.value === due);
  const state = isOverdue ? 'overdue' : isReached ? 'due' : now.value >= comingUpFrom ? 'coming-up' : 'clear';
  const reached = isReached ? axis.reached(due, strict) : null;
  const reachedAt = reached?.when ?? null;
  const [left, span] = [due - now.value, due - base.value];
  const used = share ?? (span > 0 ? (now.value - base.value) / span : 1);
  const entries = [...new Set([...base.entries, ...now.entries])];
  const { point } = axis;
  const limit: LimitFacts = {
    base: baseFacts(axis, base),
    span,
    due: point(due),
    overdueAfter: point(overdueAfter),
    comingUpFrom: point(comingUpFrom),
    now: { point: point(now.value), entries: now.entries, ...(read === undefined ? {} : { read: point(read) }) },
    left,
    used,
  };
  world.observe({ node: id, state, limit, reachedAt, entries: [...new Set([...entries, ...(reached?.entries ?? [])])], ...told });
  return {
    state,
    governing: id,
    due: limit.due,
    left,
    used,
    reachedAt,
    forecast: axis.rate === null || axis.rate <= 0 ? null : world.now.day + left / axis.rate,
    missing: [],
    stops: hold === undefined ? [] : carried(world.kinds.aspects, 'hold').inForce(id, hold, (margin) => now.value > endOf(margin), entries),
  };
}

function baseFacts({ point }: Axis, { value, why, when, entries, anchor = value, spans = 0 }: Measured['base']): LimitFacts['base'] {
  return { point: point(value), why, when, entries, ...(spans === 0 ? {} : { anchor: { point: point(anchor), spans } }) };
}
