/**
 * Codes of the problems of going through every stance of the machine (DW4xx), apart from their pages, so that a compiler carries no more of them than this.
 */
import type { Code } from '../catalogue-entry.js';

/** Every problem that `checkAccess` can report. */
export const accessCodes = {
  outOfReach: { code: 'DW401', severity: 'error' },
  deadEnd: { code: 'DW402', severity: 'error' },
  forbiddenFromTheStart: { code: 'DW403', severity: 'error' },
  idleStep: { code: 'DW404', severity: 'warning' },
  underRaisedPart: { code: 'DW405', severity: 'error' },
  noWayToWalk: { code: 'DW406', severity: 'error' },
  tooManyStances: { code: 'DW407', severity: 'warning' },
  tangledCondition: { code: 'DW408', severity: 'error' },
} as const satisfies Readonly<Record<string, Code>>;
