/**
 * When the rules of a trigger fall due after a doing: intervals with their beat, marks, stages, and what is made of them.
 *
 * Occasions, conditions and events bring nothing that could be foreseen, but for events on a day that the schedule names. A duty mix is reckoned as if all
 * work were ordinary.
 */
import type { Observation } from '../assess/assessment.js';
import { assertNever } from '../base/assert-never.js';
import type {
  CalendarAmount,
  CalendarMarksNode,
  CalendarWindowNode,
  DutyMixNode,
  IntervalNode,
  MarksNode,
  Node,
  NodeId,
} from '../graph/rule-graph.js';
import type { Day } from '../values/moment.js';
import { spanOn } from './almanac.js';
import type { Almanac } from './almanac.js';
import { calendarBeat, meterBeat } from './beat.js';
import { reachedBy, totalOn } from './course-days.js';
import { dayTable, lookUp } from './day-table.js';
import type { DayTable } from './day-table.js';
import { NEVER } from './due-days.js';
import type { BringForward, Columns } from './due-days.js';
import { dayToCome, eventToCome, stagesToCome } from './event-to-come.js';
import { markNotMet } from './mark-not-met.js';
import { oftenEnough, oftenWithin } from './several-ahead.js';
import type { Sky } from './sky.js';
import { stagesAhead } from './stages-ahead.js';
import type { UseFutures } from './use-futures.js';

/**
 * The rules of a trigger, ready to be followed.
 *
 * @param record of the assessment that the futures go on from. A rule that applies only while a condition holds is taken to go on or to stay away, as
 *   it is there.
 */
export function nextDue(nodes: readonly Node[], trigger: NodeId, record: readonly Observation[], sky: Sky): BringForward {
  const observed = new Map(record.map((observation) => [observation.node, observation]));
  const of = (id: NodeId | undefined): BringForward => {
    const node = id === undefined ? undefined : nodes[id];
    switch (node?.kind) {
      case 'interval':
        return node.doings === undefined ? afterSpan(node, observed.get(node.id), sky) : oftenWithin(node, observed.get(node.id), sky);
      case 'duty-mix':
        return afterSpan(node, observed.get(node.id), sky);
      case 'marks':
        return atMarks(node, sky.futures.get(node.amount.meter));
      case 'calendar-marks':
        return node.doings === undefined
          ? onTable(marksTable(node, sky))
          : oftenEnough(node, observed.get(node.id), marksTable(node, sky), sky);
      case 'calendar-window':
        return onTable(marksTable(node, sky));
      case 'first': {
        const first = nodes[node.first];
        if (first?.kind !== 'stages') return of(node.then);
        const on = dayToCome(observed.get(first.id));
        return on === null ? stagesAhead(first, observed.get(first.id), sky, of(node.then)) : stagesToCome(first, on, sky, of(node.then));
      }
      case 'stages': {
        const on = dayToCome(observed.get(node.id));
        return on === null ? NEVER : stagesToCome(node, on, sky, NEVER);
      }
      case 'event': {
        const on = dayToCome(observed.get(node.id));
        return on === null ? NEVER : eventToCome(node, on, sky);
      }
      case 'while':
        return observed.get(node.condition)?.truth === 'true' ? of(node.then) : NEVER;
      case 'any':
        return whicheverFirst(cheapFirst(node.parts, nodes).map(of));
      case 'whichever':
        return node.mode === 'first'
          ? whicheverFirst(cheapFirst(node.parts, nodes).map(of))
          : whicheverLast(node.parts.map(of), sky.columns);
      default:
        return NEVER;
    }
  };
  return of(trigger);
}

function afterSpan(node: IntervalNode | DutyMixNode, seen: Observation | undefined, sky: Sky): BringForward {
  const amount = node.kind === 'interval' ? node.amount : ({ on: 'meter', meter: node.meter, ticks: node.ticks } as const);
  const beyond = node.kind === 'interval' && node.strict ? 1 : 0;
  const beat = { count: node.count, early: node.early, late: node.late, beyond, limit: seen?.limit };
  switch (amount.on) {
    case 'work':
      return NEVER;
    case 'meter': {
      const course = sky.futures.get(amount.meter);
      if (course === undefined) return NEVER;
      return node.count === 'doing' ? afterTicks(course, amount.ticks + beyond) : meterBeat(course, amount.ticks, beat);
    }
    case 'calendar':
      if (node.count !== 'doing') return calendarBeat(sky.count, sky.almanac, amount, beat);
      return afterCalendar(sky.almanac, amount, beyond);
    default:
      return assertNever(amount);
  }
}

function afterTicks(course: UseFutures, ticks: number): BringForward {
  return ({ count, future, day }, due) => {
    for (let i = 0; i < count; i += 1) {
      const [f, at] = [future[i] ?? 0, day[i] ?? 0];
      due[i] = reachedBy(course, f, totalOn(course, f, at) + ticks, at, due[i] ?? 0);
    }
  };
}

function atMarks({ amount: { ticks }, early }: MarksNode, course: UseFutures | undefined): BringForward {
  if (course === undefined) return NEVER;
  return ({ count, future, day }, due) => {
    for (let i = 0; i < count; i += 1) {
      const [f, at] = [future[i] ?? 0, day[i] ?? 0];
      const mark = (Math.floor((totalOn(course, f, at) + early.size) / ticks) + 1) * ticks;
      due[i] = reachedBy(course, f, mark, at, due[i] ?? 0);
    }
  };
}

function afterCalendar(almanac: Almanac, amount: CalendarAmount, beyond: number): BringForward {
  return ({ count, day }, due) => {
    for (let i = 0; i < count; i += 1) due[i] = Math.min(due[i] ?? 0, spanOn(almanac, day[i] ?? 0, amount) + beyond);
  };
}

function onTable(table: DayTable): BringForward {
  return ({ count, day }, due) => {
    for (let i = 0; i < count; i += 1) due[i] = Math.min(due[i] ?? 0, lookUp(table, day[i] ?? 0));
  };
}

function marksTable(node: CalendarMarksNode | CalendarWindowNode, { now, to }: Sky): DayTable {
  return dayTable(now, to, (day) => markNotMet(node, day as Day));
}

/** Rules of the calendar cost least: the days that they find spare the others a search. */
export function cheapFirst(parts: readonly NodeId[], nodes: readonly Node[]): readonly NodeId[] {
  const searches = (id: NodeId): number => {
    const node = nodes[id];
    return node?.kind === 'interval' && node.amount.on === 'calendar' ? 0 : 1;
  };
  return [...parts].sort((a, b) => searches(a) - searches(b));
}

/** One after the other: what one has brought forward bounds the next. */
function whicheverFirst(parts: readonly BringForward[]): BringForward {
  const able = parts.filter((part) => part !== NEVER);
  const [only = NEVER] = able;
  if (able.length < 2) return only;
  return (doings, due) => {
    for (const part of able) part(doings, due);
  };
}

function whicheverLast(parts: readonly BringForward[], columns: Columns): BringForward {
  return (doings, due) => {
    const [own, latest] = [columns.lend(), columns.lend()];
    latest.fill(-1, 0, doings.count);
    for (const part of parts) {
      own.set(due);
      part(doings, own);
      for (let i = 0; i < doings.count; i += 1) latest[i] = Math.max(latest[i] ?? 0, own[i] ?? 0);
    }
    for (let i = 0; i < doings.count; i += 1) due[i] = Math.min(due[i] ?? 0, latest[i] ?? 0);
    columns.giveBack(own);
    columns.giveBack(latest);
  };
}
