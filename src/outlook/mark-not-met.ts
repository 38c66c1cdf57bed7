import { marginBefore } from '../graph/calendar-amount.js';
import type { CalendarMarksNode, CalendarWindowNode } from '../graph/rule-graph.js';
import { addMonths, firstOfMonth } from '../values/calendar.js';
import { civilOf, dayNumber, daysInMonth } from '../values/civil.js';
import type { Day } from '../values/moment.js';

/** A day that some months lack (30 February, the leap day) recurs within eight years or not at all. */
const REACH = 8 * 12;

/** The first calendar mark that work on `day` does not meet: whose early margin begins after it. Infinity where there is none. */
export function markNotMet(node: CalendarMarksNode | CalendarWindowNode, day: Day): number {
  let mark = markAfter(node, day);
  while (Number.isFinite(mark) && marginBefore(mark, node.early) <= day) mark = markAfter(node, mark as Day);
  return mark;
}

function markAfter(node: CalendarMarksNode | CalendarWindowNode, day: Day): number {
  const start = firstOfMonth(day);
  for (let ahead = 0; ahead <= node.months + REACH; ahead += 1) {
    const { year, month } = civilOf(addMonths(start, ahead));
    const found = marksIn(node, year, month).filter((mark) => mark > day);
    if (found.length > 0) return Math.min(...found);
  }
  return Infinity;
}

function marksIn(node: CalendarMarksNode | CalendarWindowNode, year: number, month: number): readonly Day[] {
  const marks = node.kind === 'calendar-window' ? [{ day: 1, month: node.month }] : node.days;
  const skip = node.kind === 'calendar-marks' && node.skip;
  const length = daysInMonth(year, month);
  return marks
    .filter((mark) =>
      mark.month === undefined
        ? (year * 12 + month - 1) % node.months === 0
        : mark.month === month && year % Math.max(1, Math.round(node.months / 12)) === 0,
    )
    .filter((mark) => !skip || mark.day <= length)
    .map((mark) => dayNumber({ year, month, day: Math.min(mark.day, length) }));
}
