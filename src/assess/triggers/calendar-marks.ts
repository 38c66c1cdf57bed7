import type { CalendarMarksNode, CalendarWindowNode, Margin } from '../../graph/rule-graph.js';
import { civilOf, dayNumber, daysInMonth } from '../../values/civil.js';
import type { Day } from '../../values/moment.js';
import { type Axis, axisOf } from '../axis.js';
import { doingsOf } from '../doings.js';
import { judge, type LimitRule } from '../judge.js';
import { baseForMarks, unmetMark } from '../marks.js';
import { quiet, type Reach } from '../reach.js';
import type { TriggerContext } from '../trigger-context.js';
import type { World } from '../world.js';
import { lacksBase } from './interval.js';

/** More days than a margin in months can be longer or shorter than as many months elsewhere, and than it may fall short by. */
const MONTHS_LEEWAY = 70;

/** Fixed days of each month or each year (docs/meaning.md §4, "On marks"). */
export function calendarMarks(world: World, node: CalendarMarksNode, context: TriggerContext): Reach {
  return onCalendar(world, node, node.early, (month) => marksInMonth(node, month), node.months, context);
}

/** Within a named month: falls due on its first day and is overdue after its last. */
export function calendarWindow(world: World, node: CalendarWindowNode, context: TriggerContext): Reach {
  const marks = (month: number): readonly Day[] => (isMonth(month, node.month, node.months) ? [firstOf(month)] : []);
  const search = new MarkSearch(world, marks, node.months);
  const due = latestOrNext(search, world.now.day);
  const length = due === null ? 0 : daysInMonth(civilOf(due).year, node.month) - 1;
  return onCalendar(world, { ...node, lasts: length }, node.early, marks, node.months, context);
}

function onCalendar(
  world: World,
  rule: LimitRule,
  early: Margin,
  marks: (month: number) => readonly Day[],
  months: number,
  context: TriggerContext,
): Reach {
  const axis = axisOf(world, { on: 'calendar', unit: 'days', count: 1 });
  const found = baseForMarks(world, axis, doingsOf(world, context.task));
  if (found !== null && 'missing' in found) return lacksBase(world, rule, found);
  const search = new MarkSearch(world, marks, months);
  const today = world.now.day;
  const latest = search.atOrBefore(today);
  if (found === null) {
    if (latest !== null) return lacksBase(world, rule, { missing: { what: 'record', task: context.task }, unrecorded: true, entries: [] });
    return quiet(rule.id);
  }
  const next = found.why === 'start' ? search.after(found.value as Day) : firstNotMet(search, axis, found.value as Day, early);
  if (next === null) return quiet(rule.id);
  const { due, missed } = unmetMark(next, latest ?? next - 1, latest === null ? 0 : search.countBetween(next, latest));
  const base = { value: found.value, why: found.why, when: found.when, entries: found.entries };
  return judge(world, rule, axis, {
    base,
    due,
    now: { value: today, entries: [] },
    ...(missed > 0 ? { note: { is: 'marks-missed', count: missed } as const } : {}),
  });
}

/** The first mark that a doing does not meet: whose margin begins after it. */
function firstNotMet(search: MarkSearch, axis: Axis, done: Day, early: Margin): Day | null {
  // Months are of many lengths: the search begins before the margin could end, and goes on from mark to mark.
  const from = early.calendar === undefined ? done + early.size : Math.max(done, axis.after(done, early) - MONTHS_LEEWAY);
  let next = search.after(from as Day);
  while (next !== null && axis.before(next, early) <= done) next = search.after(next);
  return next;
}

function latestOrNext(search: MarkSearch, today: Day): Day | null {
  return search.atOrBefore(today) ?? search.after(today);
}

/** Looks for marks month by month; months are counted from year 0, January = 0. */
class MarkSearch {
  constructor(
    private readonly world: World,
    private readonly marks: (month: number) => readonly Day[],
    /** The longest gap between marks that exist every time, in months. */
    private readonly months: number,
  ) {}

  /** The latest mark at or before a day; `null` if none lies in reach. */
  atOrBefore(day: Day): Day | null {
    const from = monthOf(day);
    for (let month = from; month >= from - this.reach(); month -= 1) {
      this.world.step();
      const found = this.marks(month).findLast((mark) => mark <= day);
      if (found !== undefined) return found;
    }
    return null;
  }

  /** The first mark after a day; `null` if none lies in reach. */
  after(day: Day): Day | null {
    const from = monthOf(day);
    for (let month = from; month <= from + this.reach(); month += 1) {
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

  /** A day that some months lack (30 February, the leap day) recurs within eight years or not at all. */
  private reach(): number {
    return this.months + 8 * 12;
  }
}

function monthOf(day: Day): number {
  const { year, month } = civilOf(day);
  return year * 12 + (month - 1);
}

function firstOf(month: number): Day {
  return dayNumber({ year: Math.floor(month / 12), month: (month % 12) + 1, day: 1 });
}

function isMonth(month: number, named: number, months: number): boolean {
  const everyYears = Math.max(1, Math.round(months / 12));
  return month % 12 === named - 1 && Math.floor(month / 12) % everyYears === 0;
}

/** The marks of one month, in order, without repeats. */
function marksInMonth(node: CalendarMarksNode, month: number): readonly Day[] {
  const year = Math.floor(month / 12);
  const length = daysInMonth(year, (month % 12) + 1);
  const days = node.days
    .filter((mark) => (mark.month === undefined ? month % node.months === 0 : isMonth(month, mark.month, node.months)))
    .filter((mark) => !node.skip || mark.day <= length)
    .map((mark) => Math.min(mark.day, length));
  return [...new Set(days)].sort((a, b) => a - b).map((day) => dayNumber({ year, month: (month % 12) + 1, day }));
}
