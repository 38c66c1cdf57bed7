import type { CalendarAmount, CalendarMarksNode, CalendarWindowNode, Node, NodeId } from '../graph/rule-graph.js';
import { addCalendarMonths, addDays, addMonths, firstOfMonth } from '../values/calendar.js';
import { civilOf, dayNumber, daysInMonth } from '../values/civil.js';
import type { Day } from '../values/moment.js';
import { dayReached, totalOn } from './use-futures.js';
import type { FuturesByMeter } from './use-futures.js';

/** When something falls due, in future `f`, after it was done on `day`; Infinity where that is not in sight. */
export type NextDue = (f: number, day: number) => number;

const NEVER: NextDue = () => Infinity;

/**
 * When the rules of a trigger fall due after a doing: intervals, marks and what is made of them.
 *
 * Occasions, conditions, events and stages bring nothing that could be foreseen. A duty mix is reckoned as if all work were ordinary.
 *
 * @param holds whether a condition holds now: a rule that applies only while it does is taken to go on or to stay away, as it is now.
 */
export function nextDue(
  nodes: readonly Node[],
  trigger: NodeId,
  futures: FuturesByMeter,
  holds: (condition: NodeId) => boolean = () => true,
): NextDue {
  const of = (id: NodeId | undefined): NextDue => {
    const node = id === undefined ? undefined : nodes[id];
    if (node === undefined) return NEVER;
    switch (node.kind) {
      case 'interval':
        if (node.amount.on === 'work') return NEVER;
        return node.amount.on === 'meter' ? afterTicks(node.amount.meter, node.amount.ticks, futures) : afterSpan(node.amount);
      case 'duty-mix':
        return afterTicks(node.meter, node.ticks, futures);
      case 'marks':
        return atMark(node.amount.meter, node.amount.ticks, futures);
      case 'calendar-marks':
      case 'calendar-window':
        return remembered((day) => nextMark(node, day));
      case 'first':
        return of(node.then);
      case 'while':
        return holds(node.condition) ? of(node.then) : NEVER;
      case 'any':
        return earliest(node.parts.map(of));
      case 'whichever':
        return node.mode === 'first' ? earliest(node.parts.map(of)) : latest(node.parts.map(of));
      default:
        return NEVER;
    }
  };
  return of(trigger);
}

function afterTicks(meter: string, ticks: number, futures: FuturesByMeter): NextDue {
  const course = futures.get(meter);
  return course === undefined ? NEVER : (f, day) => dayReached(course, f, totalOn(course, f, day) + ticks);
}

function atMark(meter: string, ticks: number, futures: FuturesByMeter): NextDue {
  const course = futures.get(meter);
  // Half a tick on, for the total of a simulated day that stands on the mark is not whole.
  return course === undefined
    ? NEVER
    : (f, day) => dayReached(course, f, (Math.floor((totalOn(course, f, day) + 0.5) / ticks) + 1) * ticks);
}

function afterSpan({ unit, count }: CalendarAmount): NextDue {
  switch (unit) {
    case 'minutes':
      return NEVER;
    case 'days':
      return (_, day) => day + count;
    case 'months':
      return remembered((day) => addMonths(day, count));
    case 'calendar-months':
      return remembered((day) => addDays(addCalendarMonths(day, count), 1));
    default:
      return NEVER;
  }
}

/** Along a thousand futures the same few hundred days come up again and again. */
function remembered(after: (day: Day) => number): NextDue {
  const known = new Map<number, number>();
  return (_, day) => {
    let next = known.get(day);
    if (next === undefined) known.set(day, (next = after(day as Day)));
    return next;
  };
}

/** The first day after `day` on which a calendar mark falls due. */
function nextMark(node: CalendarMarksNode | CalendarWindowNode, day: Day): number {
  const marks = node.kind === 'calendar-window' ? [{ day: 1, month: node.month }] : node.days;
  const skip = node.kind === 'calendar-marks' && node.skip;
  const start = firstOfMonth(day);
  for (let ahead = 0; ahead <= node.months + 12; ahead += 1) {
    const { year, month } = civilOf(addMonths(start, ahead));
    const length = daysInMonth(year, month);
    const found = marks
      .filter((mark) =>
        mark.month === undefined ? (year * 12 + month - 1) % node.months === 0 : mark.month === month && year % (node.months / 12) === 0,
      )
      .filter((mark) => !skip || mark.day <= length)
      .map((mark) => dayNumber({ year, month, day: Math.min(mark.day, length) }))
      .filter((mark) => mark > day);
    if (found.length > 0) return Math.min(...found);
  }
  return Infinity;
}

function earliest(parts: readonly NextDue[]): NextDue {
  const [only] = parts;
  if (parts.length === 1 && only !== undefined) return only;
  return (f, day) => {
    let least = Infinity;
    for (const part of parts) least = Math.min(least, part(f, day));
    return least;
  };
}

function latest(parts: readonly NextDue[]): NextDue {
  return (f, day) => {
    let most = -Infinity;
    for (const part of parts) most = Math.max(most, part(f, day));
    return most;
  };
}
