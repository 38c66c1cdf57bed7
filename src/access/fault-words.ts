/**
 * What faults of access have in common: rules and ways in words.
 */
import type { Never, Origin } from '../graph/rule-graph.js';
import type { AccessFault } from './access-fault.js';
import { itemAt } from './item-at.js';
import type { Machine } from './machine.js';
import { moveTitle } from './move-title.js';
import type { Way } from './stance-space.js';

/** A never-rule, if it is one, as what blocks something. */
export function ruleOf(never: Never | undefined): AccessFault['rule'] {
  return never === undefined ? undefined : { at: never.origin, text: `the rule "${never.title}"` };
}

/** A step, by one of its moves, as what blocks something. */
export function stepRule(machine: Machine, move: number): AccessFault['rule'] {
  return { at: itemAt(machine.origins, move).step.origin, text: `"${moveTitle(machine, move)}" cannot be done then` };
}

/** What a person does, step by step. */
export function wayTitles(machine: Machine, way: Way): readonly string[] {
  return way.map((move) => moveTitle(machine, move));
}

/** Where a fault is shown that nothing written can be blamed for. */
export const NOWHERE: Origin = { source: 0, line: 1, column: 1, text: '' };
