import { marginBefore } from '../graph/calendar-amount.js';
import { everyMarkedDay } from '../graph/days-by-week.js';
import { reachOf } from '../graph/marked-days.js';
import type { CalendarMarksNode, CalendarWindowNode } from '../graph/rule-graph.js';
import { civilOf } from '../values/civil.js';
import type { Day } from '../values/moment.js';

/** The first calendar mark that work on `day` does not meet: whose early margin begins after it. Infinity where there is none. */
export function markNotMet(node: CalendarMarksNode | CalendarWindowNode, day: Day): number {
  let mark = markAfter(node, day);
  while (Number.isFinite(mark) && marginBefore(mark, node.early) <= day) mark = markAfter(node, mark as Day);
  return mark;
}

function markAfter(node: CalendarMarksNode | CalendarWindowNode, day: Day): number {
  const { year, month } = civilOf(day);
  const start = year * 12 + month - 1;
  const reach = reachOf(node);
  for (let ahead = 0; ahead <= reach; ahead += 1) {
    const found = everyMarkedDay(node, start + ahead).find((mark) => mark > day);
    if (found !== undefined) return found;
  }
  return Infinity;
}
