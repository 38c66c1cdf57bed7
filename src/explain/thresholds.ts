/**
 * The points on an axis at which a limit's state can turn: coming up, due, overdue.
 */
import type { DuePoint } from '../assess/assessment.js';
import type { Day } from '../values/moment.js';
import type { RuleFacts } from './explanation.js';

/** Ticks of a meter's life total beyond `now`, ascending, each once. */
export function meterThresholds(rule: RuleFacts, meter: string, now: number): readonly number[] {
  return beyond(rule, (point) => (point.on === 'meter' && point.meter === meter ? point.ticks : null), now);
}

/** Days after today, ascending, each once. */
export function dayThresholds(rule: RuleFacts, today: Day): readonly Day[] {
  return beyond(rule, (point) => (point.on === 'calendar' ? point.day : null), today) as readonly Day[];
}

type On = (point: DuePoint) => number | null;

function beyond(rule: RuleFacts, on: On, now: number): readonly number[] {
  const found: number[] = [];
  gather(rule, on, now, found);
  return found.length < 2 ? found : [...new Set(found)].sort((a, b) => a - b);
}

/** Due and coming up begin at their point; overdue, and due of a `more than` limit, one beyond it. */
function gather({ limit, node, parts }: RuleFacts, on: On, now: number, into: number[]): void {
  if (limit !== undefined) {
    add(limit.comingUpFrom, 0, on, now, into);
    add(limit.due, node.kind === 'interval' && node.strict ? 1 : 0, on, now, into);
    add(limit.overdueAfter, 1, on, now, into);
  }
  for (const part of parts) gather(part, on, now, into);
}

function add(point: DuePoint | null, further: number, on: On, now: number, into: number[]): void {
  const value = point === null ? null : on(point);
  if (value !== null && value + further > now) into.push(value + further);
}
