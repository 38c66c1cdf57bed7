/**
 * What one rule comes to when a meter has come to a value, or a day has come, and nothing else has changed.
 */
import { assertNever } from '../base/assert-never.js';
import { hasOneMark } from '../graph/marked-days.js';
import type { DuePoint } from '../assess/assessment.js';
import type { Trigger } from '../graph/rule-graph.js';
import type { Day } from '../values/moment.js';
import type { RuleFacts } from './explanation.js';
import { mayAlter, reachesInto } from './influence.js';
import type { Influence } from './influence.js';
import { ANYTHING, between, exactly } from './possible.js';
import type { Possible } from './possible.js';
import type { Standing } from './standing.js';

/** A point on one axis: ticks of a meter's life total, or a day. */
export type At = { readonly on: 'meter'; readonly meter: string; readonly ticks: number } | { readonly on: 'day'; readonly day: Day };

const ANOTHER_DAY: Influence = { is: 'day' };

/** The influence that coming to a point has on conditions. */
export function influenceOf(at: At): Influence {
  return at.on === 'meter' ? { is: 'meter', meter: at.meter } : ANOTHER_DAY;
}

/** The state of a rule that is not made of others, at the point. */
export function atPoint(rule: RuleFacts, at: At, standing: Standing): Possible {
  const node = rule.node as Trigger;
  // What it counts from happens on a day to come.
  if (at.on === 'day' && rule.note?.is === 'not-happened' && rule.note.on !== undefined) return ANYTHING;
  switch (node.kind) {
    case 'interval':
    case 'duty-mix':
    case 'stages':
    case 'marks':
    case 'calendar-marks':
    case 'calendar-window':
    case 'sooner':
      return limitAt(rule, at, standing);
    case 'event':
    case 'asked':
      if (node.within === undefined) return asItIs(rule);
      // Where nobody noted the class, what would be due is unknown.
      return rule.limit !== undefined && rule.missing.length > 0 ? ANYTHING : limitAt(rule, at, standing);
    case 'occasion':
      return at.on === 'day' ? occasionNextDay(rule, node.when, node.of) : asItIs(rule);
    case 'shortly-before':
      return at.on === 'day' ? occasionNextDay(rule, 'before', node.of) : asItIs(rule);
    case 'attaching':
    case 'refuelling':
      return asItIs(rule);
    case 'when':
      return reachesInto(rule, influenceOf(at)) ? ANYTHING : asItIs(rule);
    case 'while':
      return whileAt(rule, at, standing);
    case 'whichever':
    case 'any':
    case 'first':
      return ANYTHING;
    default:
      return assertNever(node);
  }
}

function asItIs(rule: RuleFacts): Possible {
  return rule.state === undefined ? ANYTHING : exactly(rule.state);
}

/** Another day may be one without work, or the day after an outing is over. */
function occasionNextDay(rule: RuleFacts, when: 'before' | 'after' | 'on', of: string): Possible {
  if (of === 'storage' || (when === 'after' && (of === 'work' || of === 'outing'))) return asItIs(rule);
  return rule.note?.is === 'no-work' ? asItIs(rule) : between('due', 'resting');
}

function whileAt(rule: RuleFacts, at: At, standing: Standing): Possible {
  const [condition, then] = rule.parts;
  if (condition === undefined || then === undefined || mayAlter(condition, influenceOf(at))) return ANYTHING;
  return condition.truth === 'true' && then.parts.length === 0 ? atPoint(then, at, standing) : asItIs(rule);
}

function limitAt(rule: RuleFacts, at: At, standing: Standing): Possible {
  const due = rule.limit?.due;
  // A level read today goes by the last reading of the meter: by one of now, it may have fallen.
  if (rule.node.kind === 'sooner' && at.on === 'meter' && standing.readByNow.has(rule.node.dipstick)) return ANYTHING;
  if (due === undefined || due === null) return asItIs(rule);
  if (due.on === 'moment') return at.on === 'day' && at.day !== standing.now.day ? ANYTHING : asItIs(rule);
  if (at.on === 'day' && standing.workEndsLater && rule.baseWhen?.day === standing.now.day) return ANYTHING;
  // Time at work goes on with an outing that is under way, and a meter may count it.
  if (at.on === 'day' && standing.workToday && goesOnWithWork(rule, due, standing)) return ANYTHING;
  if (at.on === 'meter') return due.on === 'meter' && due.meter === at.meter ? meterLimitAt(rule, at.ticks, standing) : asItIs(rule);
  return due.on === 'calendar' ? dayLimitAt(rule, at.day, standing) : asItIs(rule);
}

function goesOnWithWork({ node }: RuleFacts, due: DuePoint, { withOutings }: Standing): boolean {
  return due.on === 'work' || node.kind === 'duty-mix' || (due.on === 'meter' && withOutings.has(due.meter));
}

function meterLimitAt(rule: RuleFacts, ticks: number, standing: Standing): Possible {
  // A reading taken today might be taken for the meter's value at a doing of today.
  if (rule.baseWhen?.day === standing.now.day || stoodOn(rule, standing.now.day)) return ANYTHING;
  if (ticks >= nextDueTicks(rule)) return ANYTHING;
  // Outings claim the hours of the meter as it shows them, so long as it has not shown all of theirs, or was not read since.
  if (rule.node.kind === 'duty-mix' && (rule.shares?.[0]?.ticks === 0 || rule.limit?.now?.read !== undefined)) return ANYTHING;
  // With nothing on record to count from, the first mark that is reached is unrecorded.
  if (rule.limit?.base?.why === 'mark' && ticks >= nextDueTicks(rule) - stepOf(rule)) return ANYTHING;
  const strict = rule.node.kind === 'interval' && rule.node.strict;
  return byThresholds(rule, (point) => (point.on === 'meter' ? ticks - point.ticks : null), strict);
}

function stoodOn(rule: RuleFacts, day: Day): boolean {
  return rule.stood?.some((point) => point.on === 'moment' && point.at.day === day) === true;
}

function stepOf({ node }: RuleFacts): number {
  return node.kind === 'marks' ? node.amount.ticks : 0;
}

/** Where a later stage or mark takes the place of this one. */
function nextDueTicks(rule: RuleFacts): number {
  const { node, limit } = rule;
  const due = limit?.due?.on === 'meter' ? limit.due.ticks : Infinity;
  if (node.kind === 'marks') return due + node.amount.ticks;
  if (node.kind !== 'stages' || limit?.base?.point.on !== 'meter') return Infinity;
  const base = limit.base.point.ticks;
  const later = node.amounts.map((amount) => (amount.on === 'meter' ? base + amount.ticks : due + 1)).filter((point) => point > due);
  return Math.min(Infinity, ...later);
}

function dayLimitAt(rule: RuleFacts, day: Day, standing: Standing): Possible {
  if (day === standing.now.day) return asItIs(rule);
  // In storage the due point moves on with the days.
  if (rule.note?.is === 'stood-still' && rule.note.goesOn) return ANYTHING;
  if (day >= nextDueDay(rule)) return ANYTHING;
  // With nothing on record, the first day of a beat is unrecorded once it has come.
  if (rule.limit?.base?.why === 'mark' && rule.limit.due?.on === 'calendar' && day >= rule.limit.due.day) return ANYTHING;
  return byThresholds(rule, (point) => (point.on === 'calendar' ? day - point.day : null), false);
}

function nextDueDay(rule: RuleFacts): number {
  const { node, limit } = rule;
  const due = limit?.due?.on === 'calendar' ? limit.due.day : Infinity;
  switch (node.kind) {
    case 'calendar-marks':
      return due + (hasOneMark(node) ? node.months * 28 : 1);
    case 'calendar-window':
      return due + node.months * 28;
    case 'stages':
      return node.amounts.length > 1 ? due + 1 : Infinity;
    default:
      return Infinity;
  }
}

/** The state by the recorded thresholds; `beyond` gives how far past a threshold the axis is. */
function byThresholds(rule: RuleFacts, beyond: (point: DuePoint) => number | null, strict: boolean): Possible {
  const past = (point: DuePoint | null | undefined): number | null => (point === null || point === undefined ? null : beyond(point));
  const overdue = past(rule.limit?.overdueAfter);
  const due = past(rule.limit?.due);
  const coming = past(rule.limit?.comingUpFrom);
  if (due === null) return ANYTHING;
  if (overdue !== null && overdue > 0) return exactly('overdue');
  if (due > 0 || (due === 0 && !strict)) return exactly('due');
  return exactly(coming !== null && coming >= 0 ? 'coming-up' : 'clear');
}
