import type { KindSet } from '../kinds.js';
import { lastOf } from '../triggers/last-of.js';

/** Whichever comes last of several rules. */
export const whicheverLast: KindSet = { aspects: { last: lastOf } };
