import { and, or, not } from '../conditions/logic.js';
import { when } from '../triggers/when.js';
import { whileHolds } from '../triggers/while.js';
import { test } from '../condition.js';
import type { KindSet } from '../kinds.js';
import { stopHolds } from '../stop-holds.js';

/** Tasks, rules and stops that depend on a condition; conditions joined by and, or, not. */
export const conditions: KindSet = {
  triggers: { when, while: whileHolds },
  conditions: { and, or, not },
  aspects: { gate: test, stops: stopHolds },
};
