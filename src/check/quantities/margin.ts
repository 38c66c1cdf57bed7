/**
 * Allowances, leads and hard stops, worked out on the axis of the limit that they belong to: ticks, or days for the calendar.
 *
 * A share of a calendar span counts a month as 30 days and drops the fraction: 10 % of 6 months is 18 days. A margin in whole months goes
 * by the calendar instead, from the due day. A margin in hours belongs to the limits
 * in hours, one in days to those on the calendar, a bare percentage to all; `lesser of` belongs where its spans do.
 */
import { daysBeyond } from '../../graph/calendar-amount.js';
import type { Amount, CalendarAmount, Margin } from '../../graph/rule-graph.js';
import type { MarginNode, SpanNode, UnitNode } from '../../syntax/tree.js';
import { calendarUnit, findUnit, type Unit } from '../../values/units.js';
import type { Model } from '../model.js';
import { meterUnit, writtenDays } from './amount.js';
import { ticksIn } from './units.js';

/** What a limit counts on, and how much. */
export interface Axis {
  readonly on: 'meter' | 'work' | 'calendar';
  /** For a meter. */
  readonly meter?: string;
  /** For a meter or time at work. */
  readonly unit?: Unit;
  /** The limit's span, of which percentages are taken: ticks, or days. */
  readonly size: number;
}

const PERIODS: ReadonlyMap<string, number> = new Map([
  ['quarter', 3],
  ['half-year', 6],
  ['year', 12],
]);
const DAYS_IN_MONTH = 30;
const TEN_HOURS = 360_000;

/** The axis of an amount. */
export function axisOf(model: Model, amount: Amount): Axis {
  if (amount.on === 'calendar') return calendarAxis(amount);
  const unit = findUnit(amount.on === 'work' ? 'h' : (meterUnit(model, amount.meter) ?? '')) ?? undefined;
  const meter = amount.on === 'meter' ? { meter: amount.meter } : {};
  return { on: amount.on, ...meter, ...(unit === undefined ? {} : { unit }), size: amount.ticks };
}

/** A margin's size on an axis, a month counted as 30 days; undefined where it does not belong to that axis. */
export function marginOn(model: Model, margin: MarginNode, axis: Axis): number | undefined {
  return marginOf(model, margin, axis)?.size;
}

/** A margin on an axis; undefined where it does not belong to that axis. */
export function marginOf(model: Model, margin: MarginNode, axis: Axis): Margin | undefined {
  switch (margin.kind) {
    case 'percent':
      return { size: share(axis.size, margin.number.value) };
    case 'span':
      return spanOn(model, margin, axis);
    case 'lesser':
      return lesserOn(model, margin, axis);
  }
}

/** The lead where none is given: the lesser of 10 % of the span and 10 h or 14 days; on other meters 10 %. */
export function defaultLead(axis: Axis): number {
  const tenth = share(axis.size, 10);
  if (axis.on === 'calendar') return Math.min(tenth, 14);
  return axis.unit?.dimension === 'time' ? Math.min(tenth, TEN_HOURS) : tenth;
}

/** How many months a `calendar month`, `quarter`, `half-year` or `year` has. */
export function monthsInPeriod({ text }: UnitNode): number | null {
  return text === 'week' ? null : (PERIODS.get(text) ?? 1);
}

/** Days in a calendar amount, a month counted as 30. */
export function nominalDays(unit: 'minutes' | 'days' | 'months' | 'calendar-months', count: number): number {
  if (unit === 'minutes') return Math.floor(count / 1440);
  return unit === 'days' ? count : count * DAYS_IN_MONTH;
}

function calendarAxis(amount: CalendarAmount): Axis {
  return { on: 'calendar', size: nominalDays(amount.unit, amount.count) + daysBeyond(amount) };
}

function lesserOn(model: Model, margin: Extract<MarginNode, { kind: 'lesser' }>, axis: Axis): Margin | undefined {
  const sides = [margin.first, margin.second];
  const absolute = sides.filter((side) => !isShare(side));
  const fitting = absolute.flatMap((side) => marginOf(model, side, axis) ?? []);
  if (absolute.length > 0 && fitting.length === 0) return undefined;
  const shares = sides.filter(isShare).flatMap((side) => marginOf(model, side, axis) ?? []);
  return [...fitting, ...shares].reduce((least, each) => (each.size < least.size ? each : least));
}

/** Whether a margin is made of percentages alone. */
function isShare(margin: MarginNode): boolean {
  return margin.kind === 'percent' || (margin.kind === 'lesser' && isShare(margin.first) && isShare(margin.second));
}

function spanOn(model: Model, span: SpanNode, axis: Axis): Margin | undefined {
  const unit = findUnit(span.unit.text);
  if (unit === null) return undefined;
  if (axis.on === 'calendar') return span.of === undefined ? onCalendar(span, unit) : undefined;
  if (span.of?.kind === 'work' && axis.on !== 'work') return undefined;
  if (span.of?.kind === 'meter' && model.meaning.get(span.of.name)?.id !== axis.meter) return undefined;
  const size = axis.unit === undefined ? null : ticksIn(span.number, unit, axis.unit);
  return size === null ? undefined : { size };
}

/** Whole months go by the calendar; anything else is so many days. */
function onCalendar(span: SpanNode, unit: Unit): Margin | undefined {
  const found = calendarUnit(unit);
  if (found === null) return undefined;
  const { value } = span.number;
  const [count, days] = [value * found.count, writtenDays(span)];
  const size = Math.max(0, Math.floor(value * nominalDays(found.unit, found.count)) + daysBeyond(days));
  if (found.unit === 'days' || !Number.isInteger(count)) return { size };
  return { size, calendar: { on: 'calendar', ...found, count, ...days } };
}

function share(size: number, percent: number): number {
  // Percentages may have decimals, and a binary fraction must not lose a whole tick.
  return Math.floor((size * Math.round(percent * 1000)) / 100_000);
}
