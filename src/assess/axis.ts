/**
 * The axes on which limits count: a meter, the calendar, time at work. One object per amount, so that the code that judges a
 * limit need not know which axis it is on.
 */
import { assertNever } from '../base/assert-never.js';
import { addAmount, marginAfter, marginBefore } from '../graph/calendar-amount.js';
import type { Amount, CalendarAmount, Margin } from '../graph/rule-graph.js';
import type { EntryId } from '../history/entry.js';
import type { Outing } from '../history/timeline.js';
import { notBefore } from '../values/moment.js';
import type { Day, Moment } from '../values/moment.js';
import type { DuePoint, Missing } from './assessment.js';
import { type EffectiveDoing, type MeterValue, meterValueAt } from './doings.js';
import { firstPointReaching } from './first-point-reaching.js';
import { outingsWithin } from './outings-within.js';
import type { World } from './world.js';

/** A value on an axis (ticks, days or minutes) with the entries it rests on. */
export interface AxisValue {
  readonly value: number;
  readonly entries: readonly EntryId[];
}

export interface Axis {
  /** Where the axis stands now, counted from `base` (which matters for time at work only). */
  readonly now: (base: Moment | null) => AxisValue | null;
  /** Where it stood at a doing, counted from `base` (which matters for time at work only); the doing's own entries are not repeated. */
  readonly at: (doing: EffectiveDoing, base: Moment | null) => AxisValue | null;
  /** Where it stood at a moment; for a meter, what the entry itself notes goes first. */
  readonly atMoment: (when: Moment, entry?: EntryId) => AxisValue | null;
  /** Where it stood when the machine entered service; `null` if that is not on record. */
  readonly start: () => AxisValue | null;
  /** base + k spans, always from the base. */
  readonly add: (base: number, amount: Amount, k: number) => number;
  /** Where a margin before a due point begins, and where one after it ends. */
  readonly before: (due: number, margin: Margin) => number;
  readonly after: (due: number, margin: Margin) => number;
  readonly point: (value: number) => DuePoint;
  /** The moment from which the axis stood at `value` or beyond it, as far as the record shows. */
  readonly reached: (value: number, strict: boolean) => (AxisValue & { readonly when: Moment }) | null;
  /** What would settle a missing "now". */
  readonly missing: Missing;
  /** A rate of use in units of the axis a day, where known. */
  readonly rate: number | null;
}

/** The axis that an amount counts on. */
export function axisOf(world: World, amount: Amount): Axis {
  switch (amount.on) {
    case 'meter':
      return meterAxis(world, amount.meter);
    case 'work':
      return workAxis(world, amount.duty ?? null);
    case 'calendar':
      return amount.unit === 'minutes' ? minuteAxis(world) : dayAxis(world, amount.unit === 'calendar-months');
    default:
      return assertNever(amount);
  }
}

/** Margins on axes of ticks. */
const inTicks: Pick<Axis, 'before' | 'after'> = {
  before: (due, { size }) => due - size,
  after: (due, { size }) => due + size,
};

function meterAxis(world: World, meter: string): Axis {
  const track = world.timeline.meters.get(meter);
  return {
    now: () => asValue(meterValueAt(world, meter, world.now)),
    at: (doing) => asValue(doing.meter(meter)),
    atMoment: (when, entry) => {
      const own = entry === undefined ? undefined : track?.points.findLast((point) => point.entry === entry);
      return own === undefined ? asValue(meterValueAt(world, meter, when)) : { value: own.total, entries: [own.entry, ...own.alongside] };
    },
    start: () => meterStart(world, meter),
    add: (base, amount, k) => base + k * ticksOf(amount),
    ...inTicks,
    point: (value) => ({ on: 'meter', meter, ticks: value }),
    reached: (value, strict) => {
      const point = firstPointReaching(track, value, strict);
      return point === undefined ? null : { value: point.total, when: point.when, entries: [point.entry, ...point.alongside] };
    },
    missing: { what: 'meter', meter },
    rate: world.options.rates?.get(meter) ?? null,
  };
}

function asValue(value: MeterValue | null): AxisValue | null {
  return value === null ? null : { value: value.ticks, entries: value.entries };
}

function ticksOf(amount: Amount): number {
  if (amount.on === 'calendar') throw new Error('a calendar amount has no ticks');
  return amount.ticks;
}

/** A meter stood at what the machine's own entry notes, else at 0. */
function meterStart(world: World, meter: string): AxisValue | null {
  const { machine } = world.timeline;
  if (machine.inService === null || machine.entry === null) return null;
  const point = world.timeline.meters.get(meter)?.points.find((each) => each.entry === machine.entry);
  return { value: point?.total ?? 0, entries: [machine.entry] };
}

function dayAxis(world: World, calendarMonths: boolean): Axis {
  return {
    now: () => ({ value: world.now.day, entries: [] }),
    at: (doing) => (doing.when === null ? null : { value: doing.when.day, entries: [] }),
    atMoment: (when) => ({ value: when.day, entries: [] }),
    start: () => serviceStart(world, (day) => day),
    add: (base, amount, k) => dueDay(base as Day, amount, k),
    before: marginBefore,
    after: marginAfter,
    point: (value) => ({ on: 'calendar', day: value as Day, goodThrough: calendarMonths }),
    reached: (value, strict) =>
      (strict ? world.now.day > value : world.now.day >= value)
        ? { value: strict ? value + 1 : value, when: { day: (strict ? value + 1 : value) as Day, minute: null }, entries: [] }
        : null,
    missing: { what: 'in-service' },
    rate: 1,
  };
}

/** The base itself before the first span: calendar months would else carry it to the end of its month. */
function dueDay(base: Day, amount: Amount, k: number): number {
  return k === 0 ? base : addCalendar(base, amount, k);
}

function serviceStart(world: World, value: (day: Day) => number): AxisValue | null {
  const { machine } = world.timeline;
  return machine.inService === null || machine.entry === null ? null : { value: value(machine.inService), entries: [machine.entry] };
}

/** A day plus k calendar spans, from the base each time, so that month ends do not drift. */
function addCalendar(base: Day, amount: Amount, k: number): number {
  if (amount.on !== 'calendar') throw new Error('not a calendar amount');
  return addAmount(base, amount, k);
}

/** The day that lies a calendar amount after another (minutes round up to whole days). */
export function dayAfter(day: Day, amount: CalendarAmount): Day {
  return (amount.unit === 'minutes' ? day + Math.ceil(amount.count / 1440) : addCalendar(day, amount, 1)) as Day;
}

const minutesADay = 1440;

/** Minutes since 1970-01-01T00:00. A base without a minute counts from the start of its day, a now without one at the end of it. */
function minuteAxis(world: World): Axis {
  const early = (when: Moment): number => when.day * minutesADay + (when.minute ?? 0);
  return {
    now: () => ({ value: world.now.day * minutesADay + (world.now.minute ?? minutesADay - 1), entries: [] }),
    at: (doing) => (doing.when === null ? null : { value: early(doing.when), entries: [] }),
    atMoment: (when) => ({ value: early(when), entries: [] }),
    start: () => serviceStart(world, (day) => day * minutesADay),
    add: (base, amount, k) => addCalendar(base as Day, amount, k),
    before: (due, { size }) => due - size * minutesADay,
    after: (due, { size }) => due + size * minutesADay,
    point: (value) => ({ on: 'moment', at: momentOf(value) }),
    reached: (value) => ({ value, when: momentOf(value), entries: [] }),
    missing: { what: 'in-service' },
    rate: minutesADay,
  };
}

function momentOf(minutes: number): Moment {
  const day = Math.floor(minutes / minutesADay);
  return { day: day as Day, minute: minutes - day * minutesADay };
}

/** Time at work, counted from the base: the axis stands at 0 there. */
function workAxis(world: World, duty: string | null): Axis {
  return {
    now: (base) => workSince(world, base, duty),
    at: ({ when }, base) => (when === null ? null : workBetween(world, base, when, duty)),
    atMoment: () => ({ value: 0, entries: [] }),
    // With no doing and no start on record, all the work there is counts (docs/meaning.md §4, "Work time").
    start: () => serviceStart(world, () => 0) ?? { value: 0, entries: [] },
    add: (base, amount, k) => base + k * ticksOf(amount),
    ...inTicks,
    point: (value) => ({ on: 'work', duty, ticks: value }),
    reached: () => null,
    missing: { what: 'outing' },
    rate: null,
  };
}

/** Ticks of work from one moment to another: of each outing what counts from the one on, less what counts from the other on, and never less than nothing. */
function workBetween(world: World, from: Moment | null, to: Moment, duty: string | null): AxisValue {
  const parts = outingsWithin(world, from, to).map((outing) => ({
    entry: outing.entry,
    ticks: Math.max(0, workTicks(world, outing, from, duty) - workTicks(world, outing, to, duty)),
  }));
  const counted = parts.filter(({ ticks }) => ticks !== 0);
  return { value: counted.reduce((sum, { ticks }) => sum + ticks, 0), entries: counted.map(({ entry }) => entry) };
}

/** Ticks of work in outings not before a moment; an outing that it cuts in two counts from there on. */
function workSince(world: World, base: Moment | null, duty: string | null): AxisValue {
  let total = 0;
  const entries: EntryId[] = [];
  for (const outing of outingsWithin(world, base, null)) {
    const ticks = workTicks(world, outing, base, duty);
    if (ticks === 0) continue;
    total += ticks;
    entries.push(outing.entry);
  }
  return { value: total, entries };
}

function workTicks(world: World, outing: Outing, base: Moment | null, duty: string | null): number {
  const whole = duty === null ? outing.ticks : (outing.duties.find((each) => each.duty === duty)?.ticks ?? 0);
  return whole === 0 ? 0 : Math.round(whole * shareSince(world, outing, base));
}

/** The share of an outing that lies after a moment. */
export function shareSince(world: World, outing: Outing, base: Moment | null): number {
  const end = outing.end ?? world.now;
  if (base === null || notBefore(outing.when, base)) return 1;
  return notBefore(end, base) ? shareAfter(outing.when, end, base) : 0;
}

/** The share of the time from `start` to `end` that lies after `cut`; all of it where the minutes are not known. */
function shareAfter(start: Moment, end: Moment, cut: Moment): number {
  if (start.minute === null || end.minute === null || cut.minute === null) return start.day < cut.day && end.day <= cut.day ? 0 : 1;
  const minute = (when: Moment): number => when.day * minutesADay + (when.minute ?? 0);
  const length = minute(end) - minute(start);
  return length <= 0 ? 0 : Math.min(1, Math.max(0, (minute(end) - minute(cut)) / length));
}
