/**
 * The points on an axis at which a limit's state can turn: coming up, due, overdue.
 */
import type { DuePoint } from '../assess/assessment.js';
import type { Day } from '../values/moment.js';
import type { RuleFacts } from './explanation.js';

/** Ticks of a meter's life total, ascending, each once. */
export function meterThresholds(rule: RuleFacts, meter: string): readonly number[] {
  return ascending(collect(rule, (point) => (point.on === 'meter' && point.meter === meter ? point.ticks : null)));
}

/** Days, ascending, each once. */
export function dayThresholds(rule: RuleFacts): readonly Day[] {
  return ascending(collect(rule, (point) => (point.on === 'calendar' ? point.day : null))) as readonly Day[];
}

function collect(rule: RuleFacts, on: (point: DuePoint) => number | null): readonly number[] {
  const own = thresholds(rule, on);
  return [...own, ...rule.parts.flatMap((part) => collect(part, on))];
}

/** Due and coming up begin at their point; overdue, and due of a `more than` limit, one beyond it. */
function thresholds(rule: RuleFacts, on: (point: DuePoint) => number | null): readonly number[] {
  const { limit, node } = rule;
  if (limit === undefined) return [];
  const at = (point: DuePoint | null, beyond: number): readonly number[] => {
    const value = point === null ? null : on(point);
    return value === null ? [] : [value + beyond];
  };
  const strict = node.kind === 'interval' && node.strict ? 1 : 0;
  return [...at(limit.comingUpFrom, 0), ...at(limit.due, strict), ...at(limit.overdueAfter, 1)];
}

function ascending(values: readonly number[]): readonly number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}
