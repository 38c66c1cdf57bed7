import { type DaysByWeek, markedDays, reachOf, weeksOf } from '../../graph/marked-days.js';
import type { CalendarMarksNode, CalendarWindowNode, Margin } from '../../graph/rule-graph.js';
import { civilOf, daysInMonth } from '../../values/civil.js';
import type { Day } from '../../values/moment.js';
import { type Axis, axisOf } from '../axis.js';
import { doingsOf, type EffectiveDoing } from '../doings.js';
import { judge, type LimitRule, type Measured } from '../judge.js';
import { asksFor, carried } from '../kinds.js';
import { baseForMarks, type MarksBase, unmetMark } from '../marks.js';
import { entriesOf, type FarApart, farApart, tooSoonAfter, tooSoonNote, withLater } from '../often-done.js';
import { quiet, type Reach } from '../reach.js';
import type { TriggerContext } from '../trigger-context.js';
import type { World } from '../world.js';
import { lacksBase } from './interval.js';

/** More days than a margin in months can be longer or shorter than as many months elsewhere, and than it may fall short by. */
const MONTHS_LEEWAY = 70;

/** Fixed days of each month or each year (docs/meaning.md §4, "On marks"). */
export function calendarMarks(world: World, node: CalendarMarksNode, context: TriggerContext): Reach {
  return onCalendar(world, node, node, node.doings ?? 1, context);
}

/** Within a named month: falls due on its first day and is overdue after its last. */
export function calendarWindow(world: World, node: CalendarWindowNode, context: TriggerContext): Reach {
  const search = new MarkSearch(world, node);
  const due = latestOrNext(search, world.now.day);
  const length = due === null ? 0 : daysInMonth(civilOf(due).year, node.month) - 1;
  return onCalendar(world, { ...node, lasts: length }, node, 1, context);
}

function onCalendar(
  world: World,
  rule: LimitRule,
  node: CalendarMarksNode | CalendarWindowNode,
  times: number,
  context: TriggerContext,
): Reach {
  const axis = axisOf(world, { on: 'calendar', unit: 'days', count: 1 });
  const all = farApart(doingsOf(world, context.task), node.kind === 'calendar-marks' ? node.apart : undefined);
  const doings = all.counting;
  const found = baseForMarks(world, axis, upToCounted(doings, times, context.fromStart && axis.start() !== null));
  if (found !== null && 'missing' in found) return lacksBase(world, rule, withLater(found, doings.slice(-times)));
  const search = new MarkSearch(world, node);
  const today = world.now.day;
  const latest = search.atOrBefore(today);
  if (found === null) {
    if (latest !== null) return lacksBase(world, rule, { missing: { what: 'record', task: context.task }, unrecorded: true, entries: [] });
    return beforeTheFirst(world, rule, axis, search.after(today), weeksOf(node));
  }
  const next = firstOwed(search, axis, node.early, found, doings.length >= times);
  if (next === null) return quiet(rule.id);
  const { due, missed } = unmetMark(next, latest ?? next, latest === null ? 0 : search.countBetween(next, latest));
  const base = { value: found.value, why: found.why, when: found.when, entries: found.entries };
  const measured = { base, due, now: { value: today, entries: [] } };
  if (times > 1)
    return judge(world, rule, axis, { ...measured, ...metInPart(world, axis, all, { times, due, missed, base, early: node.early }) });
  return judge(world, rule, axis, { ...measured, ...(missed > 0 ? { note: { is: 'marks-missed', count: missed } as const } : {}) });
}

/** A beat begins on its first day: before that nothing can have been missed. */
function beforeTheFirst(world: World, rule: LimitRule, axis: Axis, first: Day | null, weeks: number): Reach {
  if (first === null) return quiet(rule.id);
  const base = { value: first - 7 * weeks, why: 'mark', when: null, entries: [] } as const;
  return judge(world, rule, axis, { base, due: first, now: { value: world.now.day, entries: [] } });
}

/** Marks count from the start, from the last of the doings that met one, or, where those are too few and no start is on record, from the first of them on. */
function firstOwed(search: MarkSearch, axis: Axis, early: Margin, base: MarksBase, isMet: boolean): Day | null {
  if (base.why === 'start') return search.after(base.value as Day);
  return isMet ? firstNotMet(search, axis, base.value as Day, early) : search.after((base.value - 1) as Day);
}

/** The first mark that a doing does not meet: whose margin begins after it. */
function firstNotMet(search: MarkSearch, axis: Axis, done: Day, early: Margin): Day | null {
  // Months are of many lengths: the search begins before the margin could end, and goes on from mark to mark.
  const from = early.calendar === undefined ? done + early.size : Math.max(done, axis.after(done, early) - MONTHS_LEEWAY);
  let next = search.after(from as Day);
  while (next !== null && axis.before(next, early) <= done) next = search.after(next);
  return next;
}

/** The doings up to the one of which so many are the last: that meets the last mark that is met. Too few of them count from the start, or from the first. */
function upToCounted(doings: readonly EffectiveDoing[], times: number, hasStart: boolean): readonly EffectiveDoing[] {
  if (doings.length >= times) return doings.slice(0, doings.length - times + 1);
  return hasStart ? [] : doings.slice(0, 1);
}

interface PartlyMet {
  readonly times: number;
  readonly due: number;
  readonly missed: number;
  readonly base: Measured['base'];
  readonly early: Margin;
}

/** How many of the doings that a mark asks for there are: those since its margin began. */
function metInPart(world: World, axis: Axis, all: FarApart, part: PartlyMet): Pick<Measured, 'note' | 'stood' | 'base'> {
  world.step(part.times);
  const doings = all.counting;
  const last = doings.slice(-part.times);
  const opens = axis.before(part.due, part.early);
  const since = last.filter(({ when }) => when !== null && when.day >= opens);
  const counted = doings.length >= part.times ? last : since;
  const missed = tooSoonAfter(all, last);
  const entries = entriesOf([...counted, ...missed.flatMap(({ doing, after }) => [after, doing])], part.base.entries);
  return {
    base: { ...part.base, entries },
    note: { is: 'times-done', done: since.length, of: part.times, missed: part.missed, ...tooSoonNote(missed) },
    stood: last.flatMap(({ when }) => (when === null ? [] : [axis.point(when.day)])),
  };
}

function latestOrNext(search: MarkSearch, today: Day): Day | null {
  return search.atOrBefore(today) ?? search.after(today);
}

/** Looks for marks month by month; months are counted from year 0, January = 0. */
class MarkSearch {
  private readonly byWeek: DaysByWeek | undefined;

  constructor(
    private readonly world: World,
    private readonly node: CalendarMarksNode | CalendarWindowNode,
  ) {
    const asked = (['weeks', 'placed'] as const).find((aspect) => asksFor(node, aspect));
    this.byWeek = asked && carried(world.kinds.aspects, asked);
  }

  private marks(month: number): readonly Day[] {
    return markedDays(this.node, month, this.byWeek);
  }

  /** The latest mark at or before a day; `null` if none lies in reach. */
  atOrBefore(day: Day): Day | null {
    const from = monthOf(day);
    for (let month = from; month >= from - reachOf(this.node); month -= 1) {
      this.world.step();
      const found = this.marks(month).findLast((mark) => mark <= day);
      if (found !== undefined) return found;
    }
    return null;
  }

  /** The first mark after a day; `null` if none lies in reach. */
  after(day: Day): Day | null {
    const from = monthOf(day);
    for (let month = from; month <= from + reachOf(this.node); month += 1) {
      this.world.step();
      const found = this.marks(month).find((mark) => mark > day);
      if (found !== undefined) return found;
    }
    return null;
  }

  /** How many marks lie after `first`, up to and including `last`. */
  countBetween(first: Day, last: Day): number {
    let count = 0;
    for (let month = monthOf(first); month <= monthOf(last); month += 1) {
      this.world.step();
      count += this.marks(month).filter((mark) => mark > first && mark <= last).length;
    }
    return count;
  }
}

function monthOf(day: Day): number {
  const { year, month } = civilOf(day);
  return year * 12 + (month - 1);
}
