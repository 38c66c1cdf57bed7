/**
 * One rule of a schedule in words, as the end of a sentence: "every 100 h of engine", "before each day's work".
 */
import { assertNever } from '../base/assert-never.js';
import type {
  AskedNode,
  CalendarAmount,
  CalendarMarksNode,
  DutyMixNode,
  EventNode,
  IntervalNode,
  Node,
  OccasionNode,
  StagesNode,
  Trigger,
} from '../graph/rule-graph.js';
import { monthName, weekdayName } from '../values/calendar.js';
import type { Day } from '../values/moment.js';
import { numberText } from '../values/number-text.js';
import { amountInWords, calendarInWords, happeningTitle, meterQuantity, minutesInWords, quoted, titleOf } from './amounts-in-words.js';
import type { Titles } from './amounts-in-words.js';
import type { NodeById } from './node-by-id.js';
import { isCondition } from '../graph/node-references.js';
import { periodOf } from '../graph/period.js';
import { conditionInWords } from './condition-in-words.js';
import { safeText } from './safe-text.js';
import { listed } from '../base/listed.js';
import { counted, timesInWords } from './count-in-words.js';
import { dayInWords, monthDayInWords } from './dates-in-words.js';

/** Any node in words. */
export function nodeInWords(node: Node, byId: NodeById, names: Titles): string {
  return isCondition(node) ? conditionInWords(node, byId, names) : triggerInWords(node, byId, names);
}

/** A trigger in words; one that is made of others names them. */
export function triggerInWords(node: Trigger, byId: NodeById, names: Titles): string {
  switch (node.kind) {
    case 'interval':
      return `every ${node.strict ? 'more than ' : ''}${amountInWords(node.amount, names)}${oftenInWords(node)}${standstillInWords(node.standstill)}`;
    case 'duty-mix':
      return dutyMixInWords(node, names);
    case 'stages':
      return stagesInWords(node, names);
    case 'first':
      return partsInWords([node.first, ...(node.then === undefined ? [] : [node.then])], byId, names).join(', then ');
    case 'marks':
      return `at every multiple of ${amountInWords(node.amount, names)}`;
    case 'calendar-marks':
      return calendarMarksInWords(node);
    case 'calendar-window':
      return `${everyMonths(node.months)} in ${monthName(node.month) ?? ''}`;
    case 'whichever':
      return `${partsInWords(node.parts, byId, names).join(' or ')}, whichever ${node.mode}`;
    case 'any':
      return partsInWords(node.parts, byId, names).join('; ');
    case 'occasion':
      return occasionInWords(node);
    case 'shortly-before':
      return `within ${minutesInWords(node.withinMinutes)} before ${node.of === 'day' ? "each day's work" : `each ${node.of}`}`;
    case 'attaching':
      return `after attaching the ${safeText(names.attachments[node.attachment] ?? node.attachment)}`;
    case 'refuelling':
      return 'on refuelling';
    case 'event':
      return eventInWords(node, names);
    case 'when':
      return `when ${partsInWords([node.condition], byId, names).join('')}`;
    case 'while':
      return `while ${partsInWords([node.condition, node.then], byId, names).join(', ')}`;
    case 'asked':
      return askedInWords(node, names);
    case 'sooner':
      return `at ${shareInWords(node.share)} the time that the ${titleOf(names.dipsticks[node.dipstick]?.title, node.dipstick)} takes to fall to low`;
    default:
      return assertNever(node);
  }
}

function partsInWords(parts: readonly number[], byId: NodeById, names: Titles): readonly string[] {
  return parts.flatMap((id) => {
    const node = byId(id);
    return node === undefined ? [] : [nodeInWords(node, byId, names)];
  });
}

/** ` 2 times, 20 months apart`. */
function oftenInWords(node: Pick<IntervalNode, 'doings' | 'apart'>): string {
  return node.doings === undefined ? '' : ` ${node.doings} times${apartInWords(node)}`;
}

function apartInWords({ apart }: Pick<IntervalNode, 'apart'>): string {
  return apart === undefined ? '' : `, ${calendarInWords(apart)} apart`;
}

/** `, not counting storage of 30 days or more`. */
function standstillInWords(standstill: CalendarAmount | undefined): string {
  if (standstill === undefined) return '';
  return `, not counting storage${standstill.count === 0 ? '' : ` of ${calendarInWords(standstill)} or more`}`;
}

function dutyMixInWords(node: DutyMixNode, names: Titles): string {
  const duties = node.duties.map(({ duty, ticks }) => `${meterQuantity(ticks, node.meter, names)} in ${titleOf(names.duties[duty], duty)}`);
  return `every ${meterQuantity(node.ticks, node.meter, names)} of ${node.meter}, ${listed(duties)}`;
}

function stagesInWords(node: StagesNode, names: Titles): string {
  const points = listed(node.amounts.map((amount) => amountInWords(amount, names)));
  if (node.from.is === 'start') return `first at ${points}`;
  return `at ${points} after ${happeningTitle(node.from.event, names)}`;
}

function calendarMarksInWords(node: CalendarMarksNode): string {
  const period = periodOf(node);
  if (period !== null) return `${timesInWords(node.doings ?? 1)} each calendar ${period.period}${apartInWords(node)}`;
  if (node.weekdays !== undefined) return weekdaysInWords(node.weekdays, node.weeks);
  const days = listed(node.placed === undefined ? node.days.map(monthDayInWords) : node.placed.map(placedInWords));
  return `${everyMonths(node.months)} on ${days}${node.skip ? ' where it exists' : ''}`;
}

/** `each Monday`, `every 2 weeks on Monday, from 2 March 2026 on`. */
function weekdaysInWords(weekdays: readonly number[], weeks: CalendarMarksNode['weeks']): string {
  const days = listed(weekdays.map(nameOf));
  return weeks === undefined
    ? `each ${days}`
    : `every ${counted(weeks.count, 'week')} on ${days}, from ${dayInWords(weeks.from as Day)} on`;
}

/** `the first Monday`, `the last Friday of March`. */
function placedInWords({ weekday, day, month }: NonNullable<CalendarMarksNode['placed']>[number]): string {
  const which = day === undefined ? 'last' : (['first', 'second', 'third', 'fourth'][(day - 1) / 7] ?? `first, from day ${day} on,`);
  return `the ${which} ${nameOf(weekday)}${month === undefined ? '' : ` of ${monthName(month) ?? ''}`}`;
}

function nameOf(weekday: number): string {
  return weekdayName(weekday) ?? '';
}

function everyMonths(months: number): string {
  if (months === 12) return 'each year';
  if (months === 1) return 'each month';
  return months % 12 === 0 ? `every ${counted(months / 12, 'year')}` : `every ${counted(months, 'month')}`;
}

/** `before each day's work`, `after storage`, `on each day of work`. */
function occasionInWords(node: OccasionNode): string {
  switch (node.of) {
    case 'day':
      return node.when === 'on' ? 'on each day of work' : `${node.when} each day's work`;
    case 'outing':
    case 'shift':
      return `${node.when} each ${node.of}`;
    case 'work':
    case 'storage':
      return `${node.when} ${node.of}`;
    default:
      return assertNever(node.of);
  }
}

function eventInWords(node: EventNode, names: Titles): string {
  const event = happeningTitle(node.event, names);
  if (node.happenings !== undefined) return `after ${node.happenings} times ${event}`;
  return node.within === undefined ? `on ${event}` : `within ${amountInWords(node.within, names)} after ${event}`;
}

function askedInWords(node: AskedNode, names: Titles): string {
  const how = node.within === undefined ? 'at once' : `within ${amountInWords(node.within, names)}`;
  if (node.by.is === 'reading') return `${how} when ${quoted(names.tasks[node.by.task], node.by.task)} finds it`;
  return `${how} while ${quoted(names.defects[node.by.defect], node.by.defect)} is open as ${node.by.class}`;
}

function shareInWords(share: number): string {
  if (share === 0.5) return 'half';
  if (share === 0.25) return 'a quarter of';
  return Math.abs(share - 1 / 3) < 1e-9 ? 'a third of' : `${numberText(share * 100)} % of`;
}
