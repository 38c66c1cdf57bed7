/**
 * Plans as trigger nodes: limits, and whichever of them comes first or last.
 */
import { assertNever } from '../base/assert-never.js';
import type { Home } from '../check/model.js';
import { axisOf, monthsInPeriod, nominalDays } from '../check/quantities/margin.js';
import { DAYS_IN_WEEK, spanOfMarks } from '../check/limits.js';
import { calendarAmountOf } from '../check/quantities/amount.js';
import { sound } from '../check/whole.js';
import { lookInterval } from '../check/quantities/look.js';
import type { Amount, IntervalNode, Margin, NodeId } from '../graph/rule-graph.js';
import type { LimitNode, OftenNode, PlanNode, SpanNode } from '../syntax/tree.js';
import type { DutyShare } from './duty-mix.js';
import { marginsOn, type LimitTerms } from './margins.js';
import { amountIn, originOf, type Workshop } from './workshop.js';

/** What the limits of one plan have in common. */
export interface PlanTerms {
  readonly home: Home;
  readonly terms: LimitTerms;
  /** Shorter intervals in duties, by the meter that they count on. */
  readonly duties: readonly DutyShare[];
}

/** Adds a plan's nodes, and says the id of its top. */
export function compilePlan(shop: Workshop, plan: PlanNode, context: PlanTerms): NodeId {
  if (plan.kind !== 'whichever') return compileLimit(shop, plan, context);
  const parts = plan.parts.map((part) => compilePlan(shop, part, context));
  return shop.add({ kind: 'whichever', mode: plan.mode ?? 'first', parts, origin: originOf(shop, plan.at) });
}

function compileLimit(shop: Workshop, limit: LimitNode, context: PlanTerms): NodeId {
  switch (limit.kind) {
    case 'interval':
      return compileInterval(shop, limit, amountIn(shop, context.home, limit.span), limit.strict, context, {
        ...oftenOf(limit.often),
        ...standstillOf(limit),
      });
    case 'multiple': {
      const amount = amountIn(shop, context.home, limit.span);
      if (amount.on !== 'meter') throw new Error('unchecked: multiples of what is no meter');
      return shop.add({
        kind: 'marks',
        amount,
        ...marginsOn(shop, context.terms, axisOf(shop.model, amount)),
        origin: originOf(shop, limit.at),
      });
    }
    case 'look': {
      const whole = amountIn(shop, context.home, limit.span);
      const amount = lookAmount(whole, limit.finding.number.value / 100, limit.missing.number.value / 100);
      return compileInterval(shop, limit, amount, false, context);
    }
    case 'calendar-marks': {
      const { months, margins } = onMarks(shop, limit, context);
      const days = limit.days.map(({ day, month }) => ({ day: day.value, ...(month === undefined ? {} : { month: month.month }) }));
      const marks = { months, days, skip: limit.whereItExists, ...shop.byWeek?.(limit) };
      return shop.add({ kind: 'calendar-marks', ...marks, ...margins, origin: originOf(shop, limit.at) });
    }
    case 'weekdays': {
      const weekdays = [...new Set(limit.days.map(({ weekday }) => weekday))].sort((a, b) => a - b);
      const margins = marginsOn(shop, context.terms, { on: 'calendar', size: DAYS_IN_WEEK });
      return shop.add({ kind: 'calendar-marks', months: 1, days: [], weekdays, skip: false, ...margins, origin: originOf(shop, limit.at) });
    }
    case 'calendar-period':
      return compilePeriod(shop, limit, context);
    case 'calendar-window': {
      const { months, margins } = onMarks(shop, limit, context);
      return shop.add({ kind: 'calendar-window', months, month: limit.month.month, ...margins, origin: originOf(shop, limit.at) });
    }
    default:
      return assertNever(limit);
  }
}

function compileInterval(
  shop: Workshop,
  { at }: Pick<SpanNode, 'at'>,
  amount: Amount,
  strict: boolean,
  { terms, duties }: PlanTerms,
  counting: Pick<IntervalNode, 'doings' | 'apart' | 'standstill'> = {},
): NodeId {
  const origin = originOf(shop, at);
  const margins = marginsOn(shop, terms, axisOf(shop.model, amount));
  const shares = amount.on === 'meter' ? duties.filter(({ meter }) => meter === amount.meter) : [];
  if (amount.on !== 'meter' || shares.length === 0)
    return shop.add({ kind: 'interval', amount, ...counting, count: terms.count, ...margins, strict, origin });
  const mix = shares.map(({ duty, ticks }) => ({ duty, ticks }));
  return shop.add({ kind: 'duty-mix', meter: amount.meter, ticks: amount.ticks, duties: mix, count: terms.count, ...margins, origin });
}

/** How long storage has to be not to count; undefined where it counts. */
function standstillOf({ standstill }: Extract<LimitNode, { kind: 'interval' }>): Pick<IntervalNode, 'standstill'> {
  if (standstill === undefined) return {};
  const any = { on: 'calendar', unit: 'days', count: 0 } as const;
  return { standstill: standstill.atLeast === undefined ? any : sound(calendarAmountOf(standstill.atLeast)) };
}

/** How many doings are asked for, and how far apart. */
function oftenOf(often: OftenNode | undefined): Pick<IntervalNode, 'doings' | 'apart'> {
  if (often === undefined) return {};
  return { doings: often.times.value, ...(often.apart === undefined ? {} : { apart: sound(calendarAmountOf(often.apart)) }) };
}

/** The amount between looks: hours to the tick, days and months as days, each rounded down and at least one. */
function lookAmount(amount: Amount, finding: number, missing: number): Amount {
  if (amount.on !== 'calendar') return { ...amount, ticks: Math.max(1, lookInterval(amount.ticks, finding, missing)) };
  const days = amount.unit === 'minutes' ? amount.count / 1440 : nominalDays(amount.unit, amount.count);
  return { on: 'calendar', unit: 'days', count: Math.max(1, lookInterval(days, finding, missing)) };
}

/** Once, or so many times, in each week, month, quarter, half-year or year: a mark on its last day, met by work on any days of it. */
function compilePeriod(shop: Workshop, { unit, often, at }: Extract<LimitNode, { kind: 'calendar-period' }>, { terms }: PlanTerms): NodeId {
  const months = monthsInPeriod(unit);
  const size = months === null ? DAYS_IN_WEEK : nominalDays('months', months);
  const { late, lead, hold } = marginsOn(shop, terms, { on: 'calendar', size });
  const common = { ...oftenOf(often), skip: false, late, lead, ...(hold && { hold }), origin: originOf(shop, at) };
  if (months === null)
    return shop.add({
      kind: 'calendar-marks',
      months: 1,
      days: [],
      weekdays: [DAYS_IN_WEEK],
      early: { size: DAYS_IN_WEEK - 1 },
      ...common,
    });
  const early: Margin = { size, calendar: { on: 'calendar', unit: 'calendar-months', count: months - 1 } };
  const ends = months === 1 ? [] : [3, 6, 9, 12].filter((month) => month % months === 0);
  const days = ends.length === 0 ? [{ day: 31 }] : ends.map((month) => ({ day: 31, month }));
  return shop.add({ kind: 'calendar-marks', months: ends.length === 0 ? 1 : 12, days, early, ...common });
}

/** Months from mark to mark, and how far from one it may be done. */
function onMarks(shop: Workshop, limit: Extract<LimitNode, { kind: 'calendar-marks' | 'calendar-window' }>, { terms }: PlanTerms) {
  const { unit, count } = spanOfMarks(limit) ?? { unit: 'months', count: 1 };
  return { months: count, margins: marginsOn(shop, terms, { on: 'calendar', size: nominalDays(unit, count) }) };
}
