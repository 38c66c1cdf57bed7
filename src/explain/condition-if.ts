/**
 * The truth of a condition if an instrument read a value now, or if something else that reaches into it changed.
 */
import type { Truth } from '../assess/assessment.js';
import type { Condition, Range } from '../graph/rule-graph.js';
import type { RuleFacts } from './explanation.js';
import { mayAlter } from './influence.js';
import type { Influence } from './influence.js';

/** Whether the value lies in the range; an edge that is missing is open. */
export function inRange(value: number, range: Range): boolean {
  if (range.from !== undefined && (range.fromIncluded ? value < range.from : value <= range.from)) return false;
  return !(range.to !== undefined && (range.toIncluded ? value > range.to : value >= range.to));
}

/** The recorded truth, unless the influence may alter it: then `null`, it cannot be told. */
export function truthUnder(condition: RuleFacts, influence: Influence): Truth | null {
  return mayAlter(condition, influence) ? null : (condition.truth ?? null);
}

/** The truth once the instrument reads `value` now. */
export function truthIfRead(condition: RuleFacts, read: { readonly instrument: string; readonly value: number }): Truth | null {
  const { instrument, value } = read;
  if (!mayAlter(condition, { is: 'reading', instrument })) return condition.truth ?? null;
  const node = condition.node as Condition;
  const parts = (): readonly (Truth | null)[] => condition.parts.map((part) => truthIfRead(part, read));
  switch (node.kind) {
    case 'and':
      return join(parts(), 'false', 'true');
    case 'or':
      return join(parts(), 'true', 'false');
    case 'not':
      return negate(parts()[0] ?? null);
    case 'compare':
      return inRange(value, node.range) ? 'true' : 'false';
    case 'recent':
      return node.within?.on === 'calendar' ? 'true' : null;
    default:
      return null;
  }
}

function join(parts: readonly (Truth | null)[], decisive: Truth, neutral: Truth): Truth | null {
  if (parts.includes(decisive)) return decisive;
  if (parts.includes(null)) return null;
  return parts.includes('unknown') ? 'unknown' : neutral;
}

function negate(truth: Truth | null): Truth | null {
  if (truth === 'true') return 'false';
  return truth === 'false' ? 'true' : truth;
}
