/**
 * Days along a drawing: months as a page names them, and the grid that goes with them.
 */
import { ruleX, text } from '@observablehq/plot';
import type { Markish } from '@observablehq/plot';
import { addMonths, firstOfMonth, monthName } from '../../../values/calendar.js';
import { civilOf } from '../../../values/civil.js';
import type { Day } from '../../../values/moment.js';
import { INK } from './ink.js';

/** Drawings of the whole width of the page, in its units: A4 across at 96 to the inch, less the margins. */
export const WIDTH = 1030;

/** A month on the axis; its year is said at the first and at each January. */
interface MonthMark {
  readonly day: Day;
  readonly month: string;
  readonly year: string;
}

function monthMarks(from: Day, to: Day, step: number): readonly MonthMark[] {
  const marks: MonthMark[] = [];
  for (let day = firstOfMonth(from); day <= to; day = addMonths(firstOfMonth(day), 1)) {
    const { month, year } = civilOf(day);
    if (day < from || (month - 1) % step !== 0) continue;
    marks.push({ day, month: (monthName(month) ?? '').slice(0, 3), year: month === 1 || marks.length === 0 ? String(year) : '' });
  }
  return marks;
}

/** Units that the name of a month, a year and the word for today take, with some air. */
const [MONTH, YEAR, TODAY] = [30, 36, 40];

/**
 * A faint line for each month with its name above, years above those, and a strong line for today.
 *
 * @param room units from one end to the other.
 */
export function monthGrid(from: Day, to: Day, today: Day, room: number): readonly Markish[] {
  const perDay = room / Math.max(1, to - from);
  const step = [1, 2, 3, 6, 12].find((each) => each * 30.4 * perDay >= MONTH) ?? 12;
  const marks = monthMarks(from, to, step);
  const hasRoom = ({ day }: MonthMark): boolean => (to - day) * perDay >= MONTH;
  const isLeft = today - from < to - today;
  // Where the word for today stands, there is no room for a year.
  const [taken, free] = isLeft ? [today - YEAR / perDay, today + TODAY / perDay] : [today - (YEAR + TODAY) / perDay, today];
  const hasYear = (mark: MonthMark): boolean => mark.year !== '' && hasRoom(mark) && (mark.day < taken || mark.day > free);
  const above = { frameAnchor: 'top', textAnchor: 'start', lineAnchor: 'bottom', fontSize: 11 } as const;
  return [
    ruleX(marks, { x: 'day', stroke: INK.grid, strokeWidth: 1 }),
    text(marks.filter(hasRoom), { ...above, x: 'day', text: 'month', dy: -5, fill: INK.soft }),
    text(marks.filter(hasYear), { ...above, x: 'day', text: 'year', dy: -18, fill: INK.ink, fontWeight: 600 }),
    ruleX([today], { stroke: INK.ink, strokeWidth: 1.25 }),
    text([today], {
      ...above,
      x: (day: Day) => day,
      text: () => 'today',
      textAnchor: isLeft ? 'start' : 'end',
      dy: -18,
      fill: INK.ink,
      fontWeight: 600,
    }),
  ];
}
