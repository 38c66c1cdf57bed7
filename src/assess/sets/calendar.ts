import { dayAxis } from '../axes/day-axis.js';
import type { KindSet } from '../kinds.js';

/** Spans and margins in days, weeks, months and years. */
export const calendar: KindSet = { axes: { days: dayAxis } };
