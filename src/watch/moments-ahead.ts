import { dayAfter } from '../graph/calendar-amount.js';
import { dayItHappens } from '../assess/happenings.js';
import type { Assessment, AssessOptions, DuePoint } from '../assess/assessment.js';
import type {
  Amount,
  CalendarAmount,
  CalendarMarksNode,
  CalendarWindowNode,
  Node,
  RuleGraph,
  SeasonNode,
  ShortlyBeforeNode,
  StagesNode,
} from '../graph/rule-graph.js';
import { everyMarkedDay } from '../graph/days-by-week.js';
import { dateEntry } from '../history/dated-entry.js';
import type { Entry } from '../history/entry.js';
import type { Outing, Timeline } from '../history/timeline.js';
import { civilOf, dayNumber, daysInMonth } from '../values/civil.js';
import { addMonths, firstOfMonth } from '../values/calendar.js';
import { dayOf } from '../values/civil.js';
import { firstMinute, type Day, type Moment, onDay, parseTime } from '../values/moment.js';
import { everythingSeen, type Seen, turns, valueOf } from './ahead.js';

/** A machine as it was found at a moment. */
export interface Found {
  readonly graph: RuleGraph;
  readonly entries: readonly Entry[];
  readonly timeline: Timeline;
  readonly assessment: Assessment;
  readonly now: Moment;
  readonly options: AssessOptions;
}

const DAY = 1440;
const TICKS_PER_MINUTE = 600;

/**
 * Moments at which something may turn, as minutes since 1970-01-01, in no order; some may lie behind. Where `now` has no minute they
 * are beginnings of days.
 *
 * INVARIANT: between `now` and the first of these after it nothing turns. What an open outing adds up can only be bounded from below,
 * so the search takes it in steps that cannot overshoot.
 */
export function momentsAhead(found: Found): readonly number[] {
  const seen = everythingSeen(found.graph, found.assessment);
  const points = [
    ...seen.flatMap((each) => fromRecord(found, each)),
    ...found.graph.nodes.flatMap((node) => fromRule(found, node)),
    ...freshness(found),
    ...datedAhead(found),
    ...found.graph.events.flatMap(({ on }) => (on === undefined ? [] : [on * DAY])),
    ...midnight(found),
    ...openOuting(found, seen),
  ];
  return found.now.minute === null ? points.map((point) => Math.floor(point / DAY) * DAY) : points;
}

/** Where the limits that were judged turn, and conditions on how long ago something was. */
function fromRecord({ now }: Found, { node, observation }: Seen): readonly number[] {
  const { limit, stood } = observation;
  const found: number[] = [];
  if (limit?.due?.on === 'calendar') found.push(...turns(node, limit, 1).map((day) => day * DAY));
  if (limit?.due?.on === 'moment') found.push(...turns(node, limit, 1));
  if (node.kind === 'recent' && node.within?.on === 'calendar')
    for (const base of stood ?? []) found.push(...whenPassed(base, node.within));
  if (node.kind === 'shortly-before') found.push(...windowTurns(node, observation, now));
  // Without a minute, now stands at the end of its day.
  return now.minute === null ? found.flatMap((point) => [point, point - DAY + 1]) : found;
}

/** When the window before work opens; and, for work that is intended, when a doing lies too far back for work that begins then, and the next day. */
function windowTurns({ withinMinutes }: ShortlyBeforeNode, { note }: Seen['observation'], now: Moment): readonly number[] {
  if (note?.is !== 'work-on' || note.window === undefined) return [];
  const opens = valueOf({ on: 'moment', at: note.window.opens });
  const done = note.done === null ? [] : [valueOf({ on: 'moment', at: note.done }) + withinMinutes + 1];
  return [opens, (now.day + 1) * DAY, ...done.flatMap((point) => [point, point + DAY - 1])];
}

/** When so much time has passed since a point, of those that the record names. */
function whenPassed(base: DuePoint, within: CalendarAmount): readonly number[] {
  if (base.on !== 'calendar' && base.on !== 'moment') return [];
  if (within.unit === 'minutes') return [valueOf(base.on === 'calendar' ? { on: 'moment', at: onDay(base.day) } : base) + within.count + 1];
  return [(dayAfter(base.on === 'calendar' ? base.day : base.at.day, within) + 1) * DAY];
}

/** What turns whether or not a limit was judged: the calendar itself. */
function fromRule({ now, timeline, graph }: Found, node: Node): readonly number[] {
  switch (node.kind) {
    case 'season':
      return seasonTurns(now.day, node);
    case 'age':
      return timeline.machine.inService === null ? [] : [(dayAfter(timeline.machine.inService, node.span) + 1) * DAY];
    case 'idle':
      return [
        ...timeline.outings.flatMap(({ end }) => (end === null ? [] : [end.day])),
        ...(timeline.machine.inService === null ? [] : [timeline.machine.inService]),
      ].map((day) => dayAfter(day, node.span) * DAY);
    case 'calendar-marks':
    case 'calendar-window':
      return marksAround(now.day, node);
    case 'interval':
      return node.standstill === undefined ? [] : longEnough(timeline, node.standstill);
    case 'stages':
      return stagePoints(timeline, graph, node);
    default:
      return [];
  }
}

/** When storage that goes on has lasted so long. */
function longEnough({ storage }: Timeline, atLeast: CalendarAmount): readonly number[] {
  const last = storage.at(-1);
  return last?.end === null ? [dayAfter(last.begin.when.day, atLeast) * DAY] : [];
}

function seasonTurns(day: Day, { from, to }: SeasonNode): readonly number[] {
  const { year } = civilOf(day);
  return [year, year + 1].flatMap((each) =>
    [from, to].flatMap((mark) => {
      const at = dayNumber({ year: each, month: mark.month, day: Math.min(mark.day, daysInMonth(each, mark.month)) });
      return [at * DAY, (at + 1) * DAY];
    }),
  );
}

/** The marks of this month and the next; and first days, by which one gets on. */
function marksAround(day: Day, node: CalendarMarksNode | CalendarWindowNode): readonly number[] {
  const first = firstOfMonth(day);
  const { year, month } = civilOf(first);
  const days = [0, 1].flatMap((ahead) => [addMonths(first, ahead), ...everyMarkedDay(node, year * 12 + month - 1 + ahead)]);
  return days.map((each) => each * DAY);
}

function stagePoints(timeline: Timeline, graph: RuleGraph, node: StagesNode): readonly number[] {
  return startsOf(timeline, graph, node.from).flatMap((start) =>
    node.amounts.flatMap((amount) => (amount.on === 'calendar' ? after(start, amount) : [])),
  );
}

/** When a series may have begun. Of one that begins when a task is done, whenever anything was: who counts as doing it is for the assessor to say. */
function startsOf({ machine, events, doings, statements }: Timeline, graph: RuleGraph, from: StagesNode['from']): readonly Moment[] {
  if (from.is === 'start') return machine.inService === null ? [] : [onDay(machine.inService)];
  const { task, on } = graph.events.find(({ id }) => id === from.event) ?? {};
  if (on !== undefined) return [onDay(dayItHappens(machine, on as Day))];
  if (task !== undefined) return [...doings.values(), ...statements.values()].flat().flatMap(({ when }) => when ?? []);
  const last = events.get(from.event)?.at(-1);
  return last === undefined ? [] : [last.when];
}

function after(start: Moment, amount: CalendarAmount): readonly number[] {
  if (amount.unit === 'minutes') return [firstMinute(start) + amount.count];
  return [dayAfter(start.day, amount) * DAY];
}

/** When the readings that stand grow too old. */
function freshness({ graph, timeline }: Found): readonly number[] {
  return [...graph.gauges, ...graph.dipsticks].flatMap(({ id, freshFor }) => {
    const when = timeline.instruments.get(id)?.at(-1)?.when;
    if (when === undefined || freshFor === undefined) return [];
    if (freshFor.unit !== 'minutes') return [(dayAfter(when.day, freshFor) + 1) * DAY];
    return [(when.day + 1) * DAY, ...(when.minute === null ? [] : [when.day * DAY + when.minute + freshFor.count + 1])];
  });
}

/** Entries that are dated ahead, and the ends of outings. */
function datedAhead({ entries }: Found): readonly number[] {
  return entries.flatMap((entry) => {
    const when = dateEntry(entry)?.when;
    if (when === undefined) return [];
    return [firstMinute(when), ...(entry.kind === 'outing' ? endsOf(entry, when) : [])];
  });
}

function endsOf({ until, untilOn, hours }: Extract<Entry, { kind: 'outing' }>, start: Moment): readonly number[] {
  const day = untilOn === undefined ? start.day : (dayOf(untilOn) ?? start.day);
  const minute = until === undefined ? 0 : (parseTime(until) ?? 0);
  const reckoned = firstMinute(start) + Math.round((hours ?? 0) * 60);
  // One that ends earlier in the day than it began ended on the next day.
  return [day * DAY + minute, (day + 1) * DAY + minute, reckoned, reckoned + 1];
}

/** What belongs to a day's work belongs to it until the day is over. */
function midnight({ timeline, now }: Found): readonly number[] {
  return timeline.outings.some(({ when, end }) => when.day === now.day || end === null || end.day === now.day) ? [(now.day + 1) * DAY] : [];
}

/** While an outing is under way its time adds up, minute by minute; and one whose end lies ahead of what was noted ends now, whenever now is. */
function openOuting({ timeline, now, graph }: Found, seen: readonly Seen[]): readonly number[] {
  if (now.minute === null) return [];
  const minute = now.day * DAY + now.minute;
  const endsNow = timeline.outings.some(({ end }) => end !== null && end.day === now.day && end.minute === now.minute);
  const open = timeline.outings.filter(({ end, when }) => end === null && when.minute !== null);
  const counted = new Set(graph.meters.flatMap(({ id, fromOutings }) => (fromOutings ? [id] : [])));
  const counts = counted.size > 0 || graph.nodes.some(({ kind }) => kind === 'recent' || kind === 'duty-mix');
  return [
    ...(endsNow ? [minute + 1] : []),
    ...(open.length === 0 ? [] : seen.flatMap((each) => workTurns(each, open, counted).map((least) => minute + least))),
  ].concat(counts && open.length > 0 ? boundedSteps(seen, open, minute, counted) : []);
}

/** The fewest minutes in which time at work can come to a turning point. */
function workTurns({ node, observation: { limit } }: Seen, open: readonly Outing[], counted: ReadonlySet<string>): readonly number[] {
  if (limit?.due == null || limit.now === null || !addsUp(limit.due, open, counted)) return [];
  const now = valueOf(limit.now.point);
  return turns(node, limit, 1)
    .filter((turn) => turn > now)
    .map((turn) => Math.max(1, Math.ceil((turn - now) / TICKS_PER_MINUTE / open.length)));
}

/** Whether an axis goes on with an outing that is under way. */
function addsUp(due: DuePoint, open: readonly Outing[], counted: ReadonlySet<string>): boolean {
  if (due.on === 'meter') return counted.has(due.meter);
  return due.on === 'work' && (due.duty === null || open.some(({ duties }) => duties.some((each) => each.duty === due.duty)));
}

function stepsOn(amount: Amount, counted: ReadonlySet<string>): boolean {
  return amount.on === 'work' || (amount.on === 'meter' && counted.has(amount.meter));
}

/** Of a mix of duties the due point itself draws nearer, the faster the stricter the duty; of "so much work ago" nothing is on record. */
function boundedSteps(seen: readonly Seen[], open: readonly Outing[], minute: number, counted: ReadonlySet<string>): readonly number[] {
  return seen.flatMap(({ node, observation: { limit } }) => {
    if (node.kind === 'recent') return node.within !== undefined && stepsOn(node.within, counted) ? [minute + 1] : [];
    if (node.kind === 'compare') return counted.has(node.instrument.id) ? [minute + 1] : [];
    if (node.kind === 'stages') return node.amounts.some((amount) => stepsOn(amount, counted)) ? [minute + 1] : [];
    if (node.kind === 'marks') return counted.has(node.amount.meter) ? [minute + 1] : [];
    if (node.kind !== 'duty-mix' || limit?.now == null) return [];
    const now = valueOf(limit.now.point);
    const strictest = Math.min(node.ticks, ...node.duties.map(({ ticks }) => ticks));
    const fastest = (TICKS_PER_MINUTE * open.length * node.ticks) / strictest;
    return turns(node, limit, 1)
      .filter((turn) => turn > now)
      .map((turn) => minute + Math.max(1, Math.floor((turn - now - 1) / fastest)));
  });
}
