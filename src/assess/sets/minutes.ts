import { minuteAxis } from '../axes/minute-axis.js';
import type { KindSet } from '../kinds.js';

/** Spans in minutes by the clock. */
export const minutes: KindSet = { axes: { minutes: minuteAxis } };
