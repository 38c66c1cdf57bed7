/**
 * The limits of a task, with what they count on: what allowances, leads and holds apply to.
 */
import { addTo } from '../base/gather.js';
import type { Span } from '../base/span.js';
import type { Amount } from '../graph/rule-graph.js';
import type { LimitNode, OutcomeNode, PlanNode, SpanNode, TaskClauseNode, TaskNode } from '../syntax/tree.js';
import { calendarUnit, findUnit } from '../values/units.js';
import { clausesOf } from './clauses-of.js';
import type { Home, Model, PlacedDeclaration } from './model.js';
import { placed } from './model.js';
import { amountOf, delayOf } from './quantities/amount.js';
import { axisOf, monthsInPeriod, nominalDays, type Axis } from './quantities/margin.js';
import { valueOf, type Read } from './quantities/read.js';
import { stageSpans } from './quantities/stage-spans.js';

/** From a day of the week to the same day of the next. */
export const DAYS_IN_WEEK = 7;

/** One limit, as far as its span can be read. */
export interface TaskLimit {
  readonly at: Span;
  readonly axis: Axis;
  /** Counted from doing to doing: what `count from` speaks of. */
  readonly interval: boolean;
  /** For an interval in so many words. */
  readonly amount?: Amount;
}

/** All limits of a plan, in the order written. */
export function limitsIn(plan: PlanNode): readonly LimitNode[] {
  return plan.kind === 'whichever' ? plan.parts.flatMap(limitsIn) : [plan];
}

/** Tasks with their homes, in the order written. */
export function tasksIn(model: Model): readonly { readonly node: TaskNode; readonly home: Home }[] {
  return placed(model, 'task');
}

const speaking: ReadonlySet<TaskClauseNode['kind']> = new Set(['allow', 'lead', 'hold', 'count']);

/** Each task that says something about its limits, with all of them: its own, and those that others set by asking for it within a span. */
export function limitsByTask(model: Model): readonly { readonly node: TaskNode; readonly limits: readonly TaskLimit[] }[] {
  const asked = new Map<unknown, TaskLimit[]>();
  for (const declaration of model.declarations) {
    for (const { node, limit } of askedWithin(model, declaration)) addTo(asked, node, limit);
  }
  return tasksIn(model)
    .filter(({ node }) => node.clauses.some(({ kind }) => speaking.has(kind)))
    .map(({ node, home }) => ({
      node,
      limits: [...node.clauses.flatMap((clause) => ofClause(model, home, clause)), ...(asked.get(node) ?? [])],
    }));
}

/** The limits of a plan. */
export function planLimits(model: Model, home: Home, plan: PlanNode): readonly TaskLimit[] {
  return limitsIn(plan).flatMap((limit) => ofLimit(model, home, limit));
}

function ofClause(model: Model, home: Home, clause: TaskClauseNode): readonly TaskLimit[] {
  switch (clause.kind) {
    case 'every':
    case 'while-every':
      return planLimits(model, home, clause.plan);
    case 'first':
      return clause.what.kind === 'plan'
        ? planLimits(model, home, clause.what.plan).map((limit) => ({ ...limit, interval: false }))
        : ofSpans(model, home, stageSpans(clause.what.spans));
    case 'series':
      return ofSpans(model, home, stageSpans(clause.spans));
    case 'occasion':
      return clause.what.when === 'event' && clause.what.within !== undefined
        ? fromRead(model, clause.at, delayOf(model, home, clause.what.within), false)
        : [];
    default:
      return [];
  }
}

function ofSpans(model: Model, home: Home, spans: readonly SpanNode[]): readonly TaskLimit[] {
  return spans.flatMap((span) => fromRead(model, span.at, amountOf(model, home, span), false));
}

function ofLimit(model: Model, home: Home, limit: LimitNode): readonly TaskLimit[] {
  switch (limit.kind) {
    case 'interval':
      return fromRead(model, limit.at, amountOf(model, home, limit.span), true);
    case 'look':
      // Its own span is longer than the interval that comes of it, so margins are not compared with it.
      return fromRead(model, limit.at, amountOf(model, home, limit.span), true).map(({ at, axis, interval }) => ({ at, axis, interval }));
    case 'multiple':
      return fromRead(model, limit.at, amountOf(model, home, limit.span), false);
    case 'weekdays':
      return [{ at: limit.at, axis: { on: 'calendar', size: DAYS_IN_WEEK }, interval: false }];
    case 'calendar-period':
      return [{ at: limit.at, axis: { on: 'calendar', size: daysInPeriod(monthsInPeriod(limit.unit)) }, interval: false }];
    case 'calendar-marks':
    case 'calendar-window': {
      const span = spanOfMarks(limit);
      return span === null ? [] : [{ at: limit.at, axis: { on: 'calendar', size: nominalDays(span.unit, span.count) }, interval: false }];
    }
  }
}

/** From one mark to the next: `null` where its unit is none of the calendar. */
export function spanOfMarks({ unit: { text }, number }: Extract<LimitNode, { kind: 'calendar-marks' | 'calendar-window' }>) {
  const unit = findUnit(text);
  const each = unit === null ? null : calendarUnit(unit);
  return each === null ? null : { unit: each.unit, count: each.count * (number?.value ?? 1) };
}

function daysInPeriod(months: number | null): number {
  return months === null ? DAYS_IN_WEEK : nominalDays('months', months);
}

function fromRead(model: Model, at: Span, read: Read<Amount> | undefined, interval: boolean): readonly TaskLimit[] {
  const amount = read === undefined ? undefined : valueOf(read);
  return amount === undefined ? [] : [{ at, axis: axisOf(model, amount), interval, amount }];
}

function askedWithin(model: Model, { node, home }: PlacedDeclaration): readonly { readonly node: unknown; readonly limit: TaskLimit }[] {
  return outcomesIn(node)
    .flatMap(({ then }) => then)
    .flatMap(({ task, within, at }) => {
      const asked = model.meaning.get(task)?.node;
      if (asked === undefined || within === undefined) return [];
      return fromRead(model, at, delayOf(model, home, within), false).map((limit) => ({ node: asked, limit }));
    });
}

/** Everything that a declaration says follows from a reading or a class of defect. */
function outcomesIn(node: PlacedDeclaration['node']): readonly OutcomeNode[] {
  if (node.kind === 'defect') return node.rules.map(({ outcome }) => outcome);
  return node.kind === 'task' ? clausesOf(node.clauses, 'reads').flatMap(({ bands }) => bands.map(({ outcome }) => outcome)) : [];
}
