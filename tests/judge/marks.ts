/** Limits on marks: multiples on a meter, named days, a named month (§4 "on marks"). */
import type { CalendarMarksNode, CalendarWindowNode, Margin, MarksNode } from '../../src/graph/rule-graph.js';
import { dayInMonth, earliest, weekday, ymd, type When } from './calendar.js';
import { apartOnly, type Clock } from './intervals.js';
import { calendarLimit, meterLimit, unknown, unrecorded } from './limits.js';
import { meterNow } from './meters.js';
import type { Outcome } from './outcome.js';
import { remembered, rememberedOf } from './remembered.js';
import type { World } from './world.js';

export function marks(world: World, node: MarksNode, clock: Clock): Outcome {
  const { meter, ticks } = node.amount;
  const last = clock.doings.at(-1);
  const now = meterNow(world, meter);
  if (now === null) return unknown(node);
  const from = last === undefined ? clock.start?.meter(meter) : last.meter(meter);
  if (from === null) return unknown(node);
  if (from === undefined && now >= ticks) return unrecorded(node);
  const answered = from === undefined ? 0 : last === undefined ? from : from + node.early.size;
  const latest = Math.floor(now / ticks) * ticks;
  const due = latest > answered ? latest : (Math.floor(answered / ticks) + 1) * ticks;
  return meterLimit(world, node, meter, due - ticks, due);
}

/** The days that a rule marks. */
type Marked = Pick<CalendarMarksNode, 'months' | 'days' | 'skip' | 'weekdays' | 'weeks' | 'placed'>;

/** Every marked day some years back and on, in order. */
const markedDays = remembered((node: Marked, thisYear: number): readonly number[] => {
  const reach = Math.max(4, Math.ceil(node.months / 12) * 2 + 8, Math.ceil((node.weeks?.count ?? 0) / 52) * 2 + 2);
  const all: number[] = [];
  for (let year = Math.max(1, thisYear - reach); year <= thisYear + reach; year += 1) {
    for (let month = 1; month <= 12; month += 1) {
      for (const day of node.days) {
        const marked =
          day.month === undefined ? (year * 12 + month - 1) % node.months === 0 : day.month === month && year % (node.months / 12) === 0;
        const found = marked ? dayInMonth(year, month, day.day, node.skip) : null;
        if (found !== null) all.push(found);
      }
      if (node.weekdays === undefined && node.placed === undefined) continue;
      for (let date = 1; date <= 31; date += 1) {
        const day = dayInMonth(year, month, date, true);
        if (day !== null && (isInItsWeek(node, day) || isPlaced(node, year, month, date, day))) all.push(day);
      }
    }
  }
  return all.sort((a, b) => a - b);
});

/** A named day of the week, in each week or in every so many from the one with the first day on. */
function isInItsWeek({ weekdays = [], weeks }: Marked, day: number): boolean {
  if (!weekdays.includes(weekday(day))) return false;
  if (weeks === undefined) return true;
  const weeksOn = Math.floor((day - weeks.from + weekday(weeks.from) - 1) / 7);
  return day >= weeks.from && weeksOn % weeks.count === 0;
}

/** The second Monday is in the week from the 8th on; after the last there is none in the month. */
function isPlaced({ placed = [], months }: Marked, year: number, month: number, date: number, day: number): boolean {
  return placed.some((mark) => {
    const counts =
      mark.month === undefined ? (year * 12 + month - 1) % months === 0 : mark.month === month && year % Math.max(1, months / 12) === 0;
    const which = mark.day === undefined ? dayInMonth(year, month, date + 7, true) === null : date >= mark.day && date < mark.day + 7;
    return counts && which && weekday(day) === mark.weekday;
  });
}

/** The latest mark reached that is not met, else the next one; `undefined` where the latest is unrecorded. */
function markDue(world: World, days: readonly number[], early: Margin, clock: Clock): number | null | undefined {
  const last = clock.doings.at(-1);
  const from = last === undefined ? clock.start?.when?.day : last.when === null ? null : last.when.day;
  // Before the first day of a beat nothing was missed.
  if (from === undefined && days.every((day) => day > world.now.day)) return days[0];
  if (from === null || from === undefined) return from;
  const counting = days.filter((day) => (last === undefined ? day : earliest(day, early)) > from);
  return counting.filter((day) => day <= world.now.day).at(-1) ?? counting[0];
}

export function calendarMarks(world: World, node: CalendarMarksNode, all: Clock): Outcome {
  const clock = { ...all, doings: apartOnly(all.doings, node.apart) };
  const days = markedDays(node, ymd(world.now.day).year);
  if (node.doings !== undefined && node.doings > 1) return severalTimes(world, node, node.doings, days, clock);
  const due = markDue(world, days, node.early, clock);
  if (due === undefined) return unrecorded(node);
  if (due === null) return unknown(node);
  const base =
    clock.start === null && clock.doings.length === 0 ? { day: due - 7 * (node.weeks?.count ?? 0), minute: null } : markBase(clock);
  return calendarLimit(world, node, base, { day: due, minute: null }, 'days');
}

/** A mark is met by so many doings since its margin began; marks count from the start, or from the first doing on. */
function severalTimes(world: World, node: CalendarMarksNode, times: number, days: readonly number[], clock: Clock): Outcome {
  const undated = clock.doings.filter(({ when }) => when === null).length;
  const dated = clock.doings.flatMap(({ when }) => (when === null ? [] : [when.day]));
  const enough = clock.doings.length >= times;
  const start = clock.start?.when?.day;
  if (!enough && start === undefined && clock.doings.length === 0) return unrecorded(node);
  // Of a doing without a day nobody knows which mark it helped to meet.
  const counts = enough ? clock.doings.at(-times)?.when : start === undefined ? clock.doings[0]?.when : { day: start, minute: null };
  if (counts === null || counts === undefined || (undated > 0 && dated.length === 0 && start === undefined)) return unknown(node);
  const isMet = (mark: number): boolean => dated.filter((day) => day >= earliest(mark, node.early)).length >= times;
  const from = enough ? -Infinity : start === undefined ? counts.day : start + 1;
  const owed = days.filter((mark) => mark >= from && !(enough ? earliest(mark, node.early) <= counts.day : isMet(mark)));
  const due = owed.filter((mark) => mark <= world.now.day).at(-1) ?? owed[0];
  if (due === undefined) return unrecorded(node);
  return calendarLimit(world, node, counts, { day: due, minute: null }, 'days');
}

function markBase(clock: Clock): When {
  return clock.doings.at(-1)?.when ?? clock.start?.when ?? { day: 0, minute: null };
}

const opening = rememberedOf(({ months, month }: CalendarWindowNode): Marked => ({ months, days: [{ month, day: 1 }], skip: false }));

/** Opens on the first of the month and falls due then; overdue after its last day. */
export function calendarWindow(world: World, node: CalendarWindowNode, clock: Clock): Outcome {
  const due = markDue(world, markedDays(opening(node), ymd(world.now.day).year), node.early, clock);
  if (due === undefined) return unrecorded(node);
  if (due === null) return unknown(node);
  const { year, month } = ymd(due);
  const length = (dayInMonth(year, month, 31, false) ?? due) - due;
  return calendarLimit(world, { ...node, lasts: length }, markBase(clock), { day: due, minute: null }, 'days');
}
