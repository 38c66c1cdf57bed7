import { and, or, not } from '../conditions/logic.js';
import { when } from '../triggers/when.js';
import { whileHolds } from '../triggers/while.js';
import { behindGate } from '../behind-gate.js';
import { heldBy } from '../held-by.js';
import type { KindSet } from '../kinds.js';
import { stopHolds } from '../stop-holds.js';

/** Tasks, rules and stops that depend on a condition; conditions joined by and, or, not. */
export const conditions: KindSet = {
  triggers: { when, while: whileHolds },
  conditions: { and, or, not },
  aspects: { gate: behindGate, stops: stopHolds, held: heldBy },
};
