import type { KindSet } from '../kinds.js';
import { baseOfSeveral } from '../often-done.js';

/** So many times within a span. */
export const severalTimes: KindSet = { aspects: { often: baseOfSeveral } };
