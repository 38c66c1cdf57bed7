import { daysByWeek } from '../../graph/days-by-week.js';
import type { KindSet } from '../kinds.js';

/** Marks by the week, beside `fixedDates`: the first Monday of each month, every second Monday. */
export const weekdayMarks: KindSet = { aspects: { weeks: daysByWeek, placed: daysByWeek } };
