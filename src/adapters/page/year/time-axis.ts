/**
 * Days along a drawing: months as a page names them, and the grid that goes with them.
 */
import { ruleX, text } from '@observablehq/plot';
import type { Markish } from '@observablehq/plot';
import { addMonths, firstOfMonth, monthName } from '../../../values/calendar.js';
import { civilOf } from '../../../values/civil.js';
import type { Day } from '../../../values/moment.js';
import { INK } from './ink.js';

/** Room to each side of a drawing's own area, in its units. */
export interface Margins {
  readonly left: number;
  readonly right: number;
}

/** Drawings of the whole width of the page, in its units: A4 across at 96 to the inch, less the margins. */
export const WIDTH = 1030;

/** A month on the axis. */
interface MonthMark {
  readonly day: Day;
  readonly label: string;
}

/** The months that begin between two days, every `step` of them; January with its year, and the first as well. */
function monthMarks(from: Day, to: Day, step: number): readonly MonthMark[] {
  const marks: MonthMark[] = [];
  for (let day = firstOfMonth(from); day <= to; day = addMonths(firstOfMonth(day), 1)) {
    const { month, year } = civilOf(day);
    if (day < from || (month - 1) % step !== 0) continue;
    const name = (monthName(month) ?? '').slice(0, 3);
    marks.push({ day, label: month === 1 || marks.length === 0 ? `${name} ${year}` : name });
  }
  return marks;
}

/** A faint line for each month, its name above, and a strong line for today. */
export function monthGrid(from: Day, to: Day, today: Day, room: number): readonly Markish[] {
  const months = Math.max(1, (to - from) / 30.4);
  // A name takes some 34 units; with the year some 56.
  const step = [1, 2, 3, 6, 12].find((each) => (room / months) * each >= 46) ?? 12;
  const marks = monthMarks(from, to, step);
  return [
    ruleX(marks, { x: 'day', stroke: INK.grid, strokeWidth: 1 }),
    text(marks, {
      x: 'day',
      text: 'label',
      frameAnchor: 'top',
      dy: -9,
      dx: 1,
      textAnchor: 'start',
      lineAnchor: 'bottom',
      fill: INK.soft,
      fontSize: 11,
    }),
    ...(today >= from && today <= to ? [ruleX([today], { stroke: INK.ink, strokeWidth: 1.25 })] : []),
  ];
}
