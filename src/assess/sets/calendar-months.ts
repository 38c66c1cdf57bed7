import { everyDaySpan } from '../axes/month-ends.js';
import type { KindSet } from '../kinds.js';

/** Spans and margins in calendar months, quarters and years, and such with some days less or more. */
export const calendarMonths: KindSet = { aspects: { 'calendar-months': everyDaySpan } };
