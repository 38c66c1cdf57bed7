/**
 * What a change reaches into: whether a condition's truth may be another one after it.
 */
import { assertNever } from '../base/assert-never.js';
import type { Condition, Instrument, RecentNode } from '../graph/rule-graph.js';
import type { RuleFacts } from './explanation.js';

/** The one thing that is different in a history that was changed. */
export type Influence =
  | { readonly is: 'doing' }
  | { readonly is: 'day' }
  | { readonly is: 'meter'; readonly meter: string }
  | { readonly is: 'reading'; readonly instrument: string }
  | { readonly is: 'event'; readonly event: string }
  | { readonly is: 'defect'; readonly defect: string };

/** True if the condition, or one that it is made of, may come to something else under this influence. */
export function mayAlter(condition: RuleFacts, influence: Influence): boolean {
  return conditionMayAlter(condition.node as Condition, influence) || condition.parts.some((part) => mayAlter(part, influence));
}

/** The condition of a `when` or a `while` rule; `null` for a rule that has none. */
export function conditionOf({ node, parts }: RuleFacts): RuleFacts | null {
  return node.kind === 'when' || node.kind === 'while' ? (parts[0] ?? null) : null;
}

/** Whether the influence reaches into the condition of the rule, if it has one. */
export function reachesInto(rule: RuleFacts, influence: Influence): boolean {
  const condition = conditionOf(rule);
  return condition !== null && mayAlter(condition, influence);
}

function conditionMayAlter(node: Condition, by: Influence): boolean {
  switch (node.kind) {
    case 'and':
    case 'or':
    case 'not':
    case 'position-is':
    case 'attachment-is':
      return false;
    case 'defect-is':
      return by.is === 'doing' || (by.is === 'defect' && by.defect === node.defect);
    case 'compare':
      return instrumentMayAlter(node.instrument, by);
    case 'trend':
      return by.is === 'day' || instrumentMayAlter(node.instrument, by);
    case 'recent':
      return recentMayAlter(node, by);
    case 'unworked':
      return by.is === 'day' || by.is === 'doing';
    case 'at-work':
    case 'duty-is':
    case 'age':
    case 'idle':
    case 'season':
      return by.is === 'day';
    default:
      return assertNever(node);
  }
}

function instrumentMayAlter(instrument: Instrument, by: Influence): boolean {
  if (instrument.is === 'meter') return by.is === 'meter' && by.meter === instrument.id;
  // A reading may be too old the day after.
  return by.is === 'day' || (by.is === 'reading' && by.instrument === instrument.id);
}

function recentMayAlter(node: RecentNode, by: Influence): boolean {
  if (node.within !== undefined && (by.is === 'day' || (by.is === 'meter' && node.within.on === 'meter'))) return true;
  switch (node.what.is) {
    case 'read':
      return instrumentMayAlter(node.what.instrument, by);
    case 'done':
      return by.is === 'doing';
    case 'happened':
      // It may be one of a day that the schedule names.
      return by.is === 'day' || (by.is === 'event' && by.event === node.what.event);
    default:
      return assertNever(node.what);
  }
}
